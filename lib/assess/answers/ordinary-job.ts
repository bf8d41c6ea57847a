import type { Job, Round } from '@/lib/measure';
import type { ShopUsage } from '../what-if';

/** From the first setup to the last, epoch ms. */
export interface Rests {
  from: number;
  to: number;
}

/** What the first measurings after a repair are like: counted job by job, so that no job need be kept. */
export class OrdinaryJob {
  readonly #jobs: Record<string, number> = {};
  readonly #readings: Record<string, number> = {};
  readonly #sheets = new Map<string, { jobs: number; newest: Round }>();
  #observations = 0;
  #taken = 0;
  #rests: Rests | null = null;

  add(job: Job): void {
    for (const { setups } of job.rounds)
      for (const { takenAt } of setups)
        this.#rests = {
          from: Math.min(takenAt, this.#rests?.from ?? takenAt),
          to: Math.max(takenAt, this.#rests?.to ?? takenAt),
        };
    const round = job.rounds.find(({ stage, attempt }) => stage === 'after' && attempt === 1);
    const [first] = round?.setups ?? [];
    if (round === undefined || first === undefined) return;
    this.#jobs[first.technician] = (this.#jobs[first.technician] ?? 0) + 1;
    for (const { gauge, observations } of round.setups)
      for (const { n, quantity } of observations) {
        if (quantity !== 'height') continue;
        this.#readings[gauge] = (this.#readings[gauge] ?? 0) + n;
        this.#observations += 1;
        this.#taken += n;
      }
    const sheet = job.sheet ?? '';
    this.#sheets.set(sheet, { jobs: (this.#sheets.get(sheet)?.jobs ?? 0) + 1, newest: round });
  }

  /** The time of everything that was added; null where nothing was. */
  rests(): Rests | null {
    return this.#rests;
  }

  /** An ordinary job is the newest by the sheet that is used most. Null where there is no job with a datum. */
  usage(): ShopUsage | null {
    const [commonest] = [...this.#sheets.values()].sort((a, b) => b.jobs - a.jobs);
    if (commonest === undefined || this.#observations === 0) return null;
    const dimensions = commonest.newest.setups.flatMap(({ observations }) => observations);
    const zeros = [
      ...new Set(dimensions.flatMap(({ zero, station }) => (zero && station !== null ? [station] : []))),
    ];
    const [front, rear] = [Math.min(...zeros), Math.max(...zeros)];
    if (zeros.length < 2) return null;
    const stations = new Map<number, number>();
    const lengths = new Map<string, number>();
    for (const { quantity, zero, station, point, tolerance } of dimensions) {
      if (quantity === 'height' && !zero && station !== null) stations.set(station, tolerance);
      if (quantity === 'length') lengths.set(point, tolerance);
    }
    if (stations.size === 0) return null;
    const tolerances = [...lengths.values()];
    return {
      jobs: this.#jobs,
      readings: this.#readings,
      stations: [...stations]
        .sort(([a], [b]) => a - b)
        .map(([station, tolerance]) => ({ lever: (station - front) / (rear - front), tolerance })),
      lengths: { count: lengths.size, tolerance: tolerances[0] ?? 3 },
      readingsPerSetup: Math.max(1, Math.round(this.#taken / this.#observations)),
    };
  }
}
