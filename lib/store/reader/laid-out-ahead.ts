import { JobsAhead, type BeingRead, type JobsRead, type ReadOptions } from '@/lib/measure';
import { NewJobs } from '@/lib/store/save/lay-new-jobs';
import { OneForEach } from '@/lib/store/save/one-for-each';
import type { PieceAhead } from '@/lib/store/save/save-ahead';
import type { Alongside } from './read-path';

/** Pieces that wait to be written: reading waits for them, so that what waits does not grow with the file. */
const WAITING = 3;

/** Lays out the jobs of a file, for a database that holds none of them, while it is being read. */
export class LaidOutAhead implements Alongside {
  #jobs: JobsAhead | null = null;
  readonly #newJobs = new NewJobs();
  readonly #samples = new OneForEach();
  #waiting = 0;
  #ended = false;
  #wake: () => void = () => undefined;

  /**
   * @param lines of a piece, at least.
   * @param hand given one piece after another, and null once there are no more.
   */
  constructor(
    private readonly lines: number,
    private readonly hand: (piece: PieceAhead | null) => void,
  ) {}

  begun(file: BeingRead, knownSheets: ReadOptions['knownSheets']): void {
    this.#jobs = new JobsAhead(file, knownSheets);
  }

  async went(share: number): Promise<void> {
    const jobs = this.#jobs;
    if (jobs === null || this.#ended) return;
    for (let some = jobs.take(this.lines); some !== null; some = jobs.take(this.lines))
      await this.#lay(some, share);
    if (jobs.givenUp) this.stop();
  }

  /** Nothing is waited for that only the whole file tells. */
  async ended(): Promise<void> {
    const rest = this.#ended ? null : (this.#jobs?.takeRest() ?? null);
    if (rest !== null) await this.#lay(rest, 1);
    this.stop();
  }

  /** Whether nothing more is handed out, so that nothing more has to be read. */
  get stopped(): boolean {
    return this.#ended;
  }

  /** Whether all that was handed out is what the whole file says, once it is read. */
  holds(): boolean {
    return this.#jobs?.holds() === true;
  }

  /** A piece was written. */
  taken(): void {
    this.#waiting--;
    this.#wake();
  }

  /** Nothing more is wanted. */
  stop(): void {
    if (!this.#ended) this.hand(null);
    this.#ended = true;
    this.#wake();
  }

  async #lay({ jobs, readings }: JobsRead, share: number): Promise<void> {
    while (this.#waiting >= WAITING && !this.#ended)
      await new Promise<void>((resolve) => (this.#wake = resolve));
    if (this.#ended) return;
    this.#waiting++;
    const samples = this.#samples.newIn(readings);
    this.hand({ rows: this.#newJobs.layOut(readings, jobs), samples, share });
  }
}
