import { Worker } from 'node:worker_threads';
import type { FileReadings, SheetIds } from '@/lib/store/save/file-readings';
import type { NewRows } from '@/lib/store/save/new-rows';
import type { Reading } from '@/lib/measure';
import type { PathToRead } from './read-path';
import type { Asking, Said, ThreadRead } from './thread';

interface Waiting {
  answer: (answer: unknown) => void;
  refuse: (error: Error) => void;
}

/** What is made of a line is done with soon: little room for it keeps the thread small. */
const ROOM = { maxYoungGenerationSizeMb: 8 };

/** A thread that reads one file, holds its readings, and lays them out while this one writes. */
export class ReadingThread {
  readonly #worker = new Worker(new URL('./thread.mjs', import.meta.url), { resourceLimits: ROOM });
  readonly #waiting: Waiting[] = [];
  #ended: Error | null = null;

  constructor(tell: (share: number) => void) {
    this.#worker.on('message', (said: Said) => {
      if ('share' in said) tell(said.share);
      else this.#waiting.shift()?.answer(said.answer);
    });
    this.#worker.on('error', (error: Error) => {
      this.#ended = error;
      for (const { refuse } of this.#waiting.splice(0)) refuse(error);
    });
  }

  // The thread answers with what its method gives.
  read = (of: PathToRead) => this.#ask({ method: 'read', of }) as Promise<ThreadRead>;

  /** @param held of a file that was read. */
  readings = (held: NonNullable<ThreadRead['held']>): FileReadings => ({
    ...held,
    samples: () => this.#ask({ method: 'samples', of: undefined }) as Promise<Reading[]>,
    readingsOf: (of: readonly number[]) => this.#ask({ method: 'readingsOf', of }) as Promise<Reading[]>,
    all: () => this.#ask({ method: 'all', of: undefined }) as Promise<Reading[]>,
    know: (of: SheetIds) => this.#ask({ method: 'know', of }) as Promise<void>,
    layOut: (of: readonly number[]) => this.#ask({ method: 'layOut', of }) as Promise<NewRows>,
  });

  async close(): Promise<void> {
    await this.#worker.terminate();
  }

  #ask(asking: Asking): Promise<unknown> {
    return new Promise((answer, refuse) => {
      if (this.#ended !== null) return refuse(this.#ended);
      this.#waiting.push({ answer, refuse });
      this.#worker.postMessage(asking);
    });
  }
}
