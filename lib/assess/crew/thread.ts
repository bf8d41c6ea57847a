import { parentPort } from 'node:worker_threads';
import { alone, type Crew } from './crew';

/** What one thread asks of another. */
export type Asking =
  | { method: 'tally'; of: Parameters<Crew['tally']>[0] }
  | { method: 'judge'; of: Parameters<Crew['judge']>[0] };

const answerTo = (asking: Asking): Promise<unknown> =>
  asking.method === 'tally' ? alone.tally(asking.of) : alone.judge(asking.of);

// An error is thrown on: it ends this thread and comes to the other as the error of what was asked.
parentPort?.on('message', (asking: Asking) => {
  void answerTo(asking).then((answer) => parentPort?.postMessage(answer));
});
