import { parentPort } from 'node:worker_threads';
import { type Works, WORKS } from './crew';

/** What one thread asks of another. */
export type Asking = {
  [Method in keyof Works]: { method: Method; of: Parameters<Works[Method]>[0] };
}[keyof Works];

function answerTo({ method, of }: Asking): unknown {
  switch (method) {
    case 'tally':
      return WORKS.tally(of);
    case 'assess':
      return WORKS.assess(of);
    case 'foretell':
      return WORKS.foretell(of);
  }
}

// An error is thrown on: it ends this thread and comes to the other as the error of what was asked.
parentPort?.on('message', (asking: Asking) => parentPort?.postMessage(answerTo(asking)));
