import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Crew } from './crew';
import type { Asking } from './thread';

interface Asked {
  asking: Asking;
  answer: (result: unknown) => void;
  refuse: (error: Error) => void;
}

/** Handed out beyond the one under work, so that a thread does not wait for the next. */
const AHEAD = 1;

/** Most of what a thread makes is done with a round later: where there is more room for it, less is carried along. */
const ROOM = { maxYoungGenerationSizeMb: 96 };

/**
 * A crew of threads, one for each core. Starting one takes about a second, which a few hundred rounds are worth.
 * What a thread throws comes back as the error of what was asked of the crew; it takes no more work after that.
 */
export function threads(count = availableParallelism()): Crew {
  const waiting: Asked[] = [];
  let ended: Error | null = null;
  const crew = Array.from({ length: count }, () => ({
    worker: new Worker(new URL('./thread.mjs', import.meta.url), { resourceLimits: ROOM }),
    asked: [] as Asked[],
  }));
  const handOut = () => {
    for (const { worker, asked } of crew) {
      while (asked.length <= AHEAD) {
        const next = waiting.shift();
        if (next === undefined) return;
        asked.push(next);
        worker.postMessage(next.asking);
      }
    }
  };
  for (const { worker, asked } of crew) {
    worker.on('message', (result: unknown) => {
      asked.shift()?.answer(result);
      handOut();
    });
    worker.on('error', (error: Error) => {
      ended = new Error(`A thread of this crew has ended: ${error.message}`, { cause: error });
      for (const one of crew) for (const { refuse } of one.asked.splice(0)) refuse(error);
      for (const { refuse } of waiting.splice(0)) refuse(error);
    });
  }
  const ask = (asking: Asking): Promise<unknown> =>
    new Promise((answer, refuse) => {
      if (ended !== null) {
        refuse(ended);
        return;
      }
      waiting.push({ asking, answer, refuse });
      handOut();
    });
  return {
    // A thread answers with what its method gives.
    tally: (of) => ask({ method: 'tally', of }) as ReturnType<Crew['tally']>,
    judge: (of) => ask({ method: 'judge', of }) as ReturnType<Crew['judge']>,
    assess: (of) => ask({ method: 'assess', of }) as ReturnType<Crew['assess']>,
    foretell: (of) => ask({ method: 'foretell', of }) as ReturnType<Crew['foretell']>,
    close: async () => {
      await Promise.all(crew.map(({ worker }) => worker.terminate()));
    },
  };
}
