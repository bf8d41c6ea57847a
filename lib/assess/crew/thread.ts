import { parentPort } from 'node:worker_threads';
import { type Works, WORKS } from './crew';
import { SameLearned } from './same-learned';

/** A method, and what it is asked of. */
export type Task = {
  [Method in keyof Works]: { method: Method; of: Parameters<Works[Method]>[0] };
}[keyof Works];

/** What one thread asks of another, with the number of what was learned. */
export type Asking = Task & { number: number };

const same = new SameLearned();

function answerTo({ method, of, number }: Asking): unknown {
  const learned = same.of(number, of.learned);
  switch (method) {
    case 'tally':
      return WORKS.tally({ ...of, learned });
    case 'assess':
      return WORKS.assess({ ...of, learned });
    case 'foretell':
      return WORKS.foretell({ ...of, learned });
  }
}

// An error is thrown on: it ends this thread and comes to the other as the error of what was asked.
parentPort?.on('message', (asking: Asking) => parentPort?.postMessage(answerTo(asking)));
