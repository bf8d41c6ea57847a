import { Worker } from 'node:worker_threads';
import type { FileReadings } from '@/lib/store/save/file-readings';
import type { NewRows } from '@/lib/store/save/new-rows';
import type { PieceAhead } from '@/lib/store/save/save-ahead';
import type { Reading } from '@/lib/measure';
import type { PathToRead } from './read-path';
import type { Asking, Said, ThreadRead, Told } from './thread';

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
  /** Pieces that came and were not asked for yet, and whoever waits for one. */
  readonly #pieces: (PieceAhead | null)[] = [];
  #wanting: Waiting | null = null;

  /** Told the share that is read, from 0 to 1. */
  tell: (share: number) => void;

  constructor(tell: (share: number) => void = () => undefined) {
    this.tell = tell;
    this.#worker.on('message', (said: Said) => {
      if ('share' in said) this.tell(said.share);
      else if ('piece' in said) this.#came(said.piece);
      else this.#waiting.shift()?.answer(said.answer);
    });
    this.#worker.on('error', (error: Error) => {
      this.#ended = error;
      for (const { refuse } of this.#waiting.splice(0)) refuse(error);
      this.#wanting?.refuse(error);
    });
  }

  /** Whether the process goes on for its sake. */
  holdsOpen(is: boolean): void {
    if (is) this.#worker.ref();
    else this.#worker.unref();
  }

  // The thread answers with what its method gives.
  /** @param ahead lines of a piece that is handed out while the file is read; 0 for none. */
  read = (of: PathToRead, ahead = 0) =>
    this.#ask({ method: 'read', of: { ...of, ahead } }) as Promise<ThreadRead>;

  /** The pieces of a file that is being read. Whoever leaves off is sent no more of them. */
  async *pieces(): AsyncGenerator<PieceAhead> {
    const tell = (told: Told) => this.#worker.postMessage(told);
    try {
      for (let piece = await this.#piece(); piece !== null; piece = await this.#piece()) {
        yield piece;
        tell({ ahead: 'taken' });
      }
    } finally {
      tell({ ahead: 'stop' });
    }
  }

  /** @param held of a file that was read. */
  readings = (held: NonNullable<ThreadRead['held']>): FileReadings => ({
    ...held,
    samples: () => this.#ask({ method: 'samples', of: undefined }) as Promise<Reading[]>,
    readingsOf: (of: readonly number[]) => this.#ask({ method: 'readingsOf', of }) as Promise<Reading[]>,
    all: () => this.#ask({ method: 'all', of: undefined }) as Promise<Reading[]>,
    layOut: (of: readonly number[]) => this.#ask({ method: 'layOut', of }) as Promise<NewRows>,
  });

  async close(): Promise<void> {
    await this.#worker.terminate();
  }

  #came(piece: PieceAhead | null): void {
    const wanting = this.#wanting;
    this.#wanting = null;
    if (wanting === null) this.#pieces.push(piece);
    else wanting.answer(piece);
  }

  #piece(): Promise<PieceAhead | null> {
    const next = this.#pieces.shift();
    if (next !== undefined) return Promise.resolve(next);
    if (this.#ended !== null) return Promise.reject(this.#ended);
    return new Promise((resolve, refuse) => {
      this.#wanting = { answer: (piece) => resolve(piece as PieceAhead | null), refuse };
    });
  }

  #ask(asking: Asking): Promise<unknown> {
    return new Promise((answer, refuse) => {
      if (this.#ended !== null) return refuse(this.#ended);
      this.#waiting.push({ answer, refuse });
      this.#worker.postMessage(asking);
    });
  }
}
