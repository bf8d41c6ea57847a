import { parentPort } from 'node:worker_threads';
import { SameLearned } from '@/lib/assess/crew';
import { Works } from './works';

/** A method, and what it is asked of. */
type Task<Method extends keyof Works> = { method: Method; of: Parameters<Works[Method]>[0] };

/** What one thread asks of another; a pass with the number of what was learned before it. */
export type Asking =
  | { [Method in Exclude<keyof Works, 'tally'>]: Task<Method> }[Exclude<keyof Works, 'tally'>]
  | (Task<'tally'> & { number: number });

const works = new Works();
const same = new SameLearned();

function answer(asking: Asking): void {
  switch (asking.method) {
    case 'take':
      return say(works.take(asking.of));
    case 'survey':
      return say(works.survey(asking.of));
    case 'tally':
      return say(works.tally({ ...asking.of, learned: same.of(asking.number, asking.of.learned) }));
    case 'know':
      return say(works.know(asking.of));
    case 'shown':
      return say(works.shown());
    case 'judge':
      return say(works.judge(asking.of));
  }
}

// Copied, never moved: from the first buffer on that leaves a thread, the engine throws away all compiled code that looks
// into arrays of numbers, and has what it makes anew ask each time whether they are still there.
const say = (said: unknown) => parentPort?.postMessage(said);

// An error is thrown on: it ends this thread and comes to the other as the error of what was asked.
parentPort?.on('message', answer);
