import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';

/** What is asked of a thread: one of its methods. */
interface Asking {
  method: string;
  of: unknown;
}

interface Asked {
  asking: Asking;
  apart: boolean;
  answer: (result: unknown) => void;
  refuse: (error: Error) => void;
}

interface Member {
  worker: Worker;
  asked: Asked[];
}

/** Handed out beyond the one under work, so that a thread does not wait for the next. */
const AHEAD = 1;

/** Most of what a thread makes is done with a round later: where there is more room for it, less is carried along. */
const ROOM = { maxYoungGenerationSizeMb: 96 };

/**
 * It has its young room at once: growing into it, it would collect a third more often. And it does not look for what can
 * be thrown away before it holds so much, MB: it keeps a third of that, and looked ten times.
 */
const AT_ONCE = [
  `--min-semi-space-size=${ROOM.maxYoungGenerationSizeMb / 3}`,
  '--initial-old-space-size=128',
];

/**
 * Threads of one program, one for each core, which answer in the order in which they are asked. What a thread throws
 * comes back as the error of what was asked; none takes more work after that.
 */
export class Pool {
  readonly #members: readonly Member[];
  readonly #waiting: Asked[] = [];
  #ended: Error | null = null;

  constructor(program: URL, count = availableParallelism()) {
    for (const flag of AT_ONCE) setFlagsFromString(flag);
    this.#members = Array.from({ length: count }, () => ({
      worker: new Worker(program, { resourceLimits: ROOM }),
      asked: [] as Asked[],
    }));
    for (const { worker, asked } of this.#members) {
      worker.on('message', (result: unknown) => {
        asked.shift()?.answer(result);
        this.#handOut();
      });
      worker.on('error', (error: Error) => this.#end(error));
    }
  }

  /**
   * Asks whichever thread is free first.
   * @param apart of what is asked together every second thread begins at the end: who is asked of nearly the same again,
   * in the same order, meets most of what it has met before.
   */
  ask(asking: Asking, apart = false): Promise<unknown> {
    return new Promise((answer, refuse) => {
      if (this.#ended !== null) return refuse(this.#ended);
      this.#waiting.push({ asking, apart, answer, refuse });
      this.#handOut();
    });
  }

  /** Asks each of them, after all that it was asked before. */
  askAll(asking: Asking): Promise<unknown[]> {
    return Promise.all(
      this.#members.map(
        (member) =>
          new Promise((answer, refuse) => {
            if (this.#ended !== null) return refuse(this.#ended);
            hand(member, { asking, apart: false, answer, refuse });
          }),
      ),
    );
  }

  async close(): Promise<void> {
    await Promise.all(this.#members.map(({ worker }) => worker.terminate()));
  }

  #handOut(): void {
    for (const [place, member] of this.#members.entries()) {
      while (member.asked.length <= AHEAD) {
        const isFromEnd = place % 2 === 1 && this.#waiting.at(-1)?.apart === true;
        const next = isFromEnd ? this.#waiting.pop() : this.#waiting.shift();
        if (next === undefined) return;
        hand(member, next);
      }
    }
  }

  #end(error: Error): void {
    this.#ended = new Error(`A thread of this crew has ended: ${error.message}`, { cause: error });
    for (const { asked } of this.#members) for (const { refuse } of asked.splice(0)) refuse(error);
    for (const { refuse } of this.#waiting.splice(0)) refuse(error);
  }
}

function hand({ worker, asked }: Member, one: Asked): void {
  asked.push(one);
  worker.postMessage(one.asking);
}
