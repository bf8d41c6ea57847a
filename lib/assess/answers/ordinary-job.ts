import type { Job, Observation } from '@/lib/measure';
import type { ShopUsage } from '../what-if';

/** From the first setup to the last, epoch ms. */
export interface Rests {
  from: number;
  to: number;
}

/** What one job says of how the shop works. Plain JSON. */
export interface OrdinaryShare {
  rests: Rests | null;
  /** The first measuring after the repair; null where there is none. */
  first: FirstMeasuring | null;
}

interface FirstMeasuring {
  technician: string;
  sheet: string;
  /** Readings of heights by gauge. */
  readings: [gauge: string, readings: number][];
  heights: number;
  dimensions: Dimensions;
}

/** What is measured by a sheet. */
interface Dimensions {
  zeros: number[];
  stations: [station: number, tolerance: number][];
  lengths: [point: string, tolerance: number][];
}

export function ordinaryIn(job: Job): OrdinaryShare {
  const times = job.rounds.flatMap(({ setups }) => setups.map(({ takenAt }) => takenAt));
  const rests = times.length === 0 ? null : { from: Math.min(...times), to: Math.max(...times) };
  const round = job.rounds.find(({ stage, attempt }) => stage === 'after' && attempt === 1);
  const [first] = round?.setups ?? [];
  if (round === undefined || first === undefined) return { rests, first: null };
  const readings = new Map<string, number>();
  let heights = 0;
  for (const { gauge, observations } of round.setups)
    for (const { n, quantity } of observations) {
      if (quantity !== 'height') continue;
      readings.set(gauge, (readings.get(gauge) ?? 0) + n);
      heights += 1;
    }
  const { technician } = first;
  const dimensions = dimensionsOf(round.setups.flatMap(({ observations }) => observations));
  return {
    rests,
    first: { technician, sheet: job.sheet ?? '', readings: [...readings], heights, dimensions },
  };
}

function dimensionsOf(observations: readonly Observation[]): Dimensions {
  const zeros = new Set<number>();
  const stations = new Map<number, number>();
  const lengths = new Map<string, number>();
  for (const { quantity, zero, station, point, tolerance } of observations) {
    if (zero && station !== null) zeros.add(station);
    if (quantity === 'height' && !zero && station !== null) stations.set(station, tolerance);
    if (quantity === 'length') lengths.set(point, tolerance);
  }
  return { zeros: [...zeros], stations: [...stations], lengths: [...lengths] };
}

/** What the first measurings after a repair are like: counted job by job, so that no job need be kept. */
export class OrdinaryJob {
  readonly #jobs: Record<string, number> = {};
  readonly #readings: Record<string, number> = {};
  readonly #sheets = new Map<string, { jobs: number; newest: Dimensions }>();
  #heights = 0;
  #taken = 0;
  #rests: Rests | null = null;

  /** In the order of time. */
  add({ rests, first }: OrdinaryShare): void {
    if (rests !== null)
      this.#rests = {
        from: Math.min(rests.from, this.#rests?.from ?? rests.from),
        to: Math.max(rests.to, this.#rests?.to ?? rests.to),
      };
    if (first === null) return;
    const { technician, sheet, readings, heights, dimensions } = first;
    this.#jobs[technician] = (this.#jobs[technician] ?? 0) + 1;
    for (const [gauge, taken] of readings) {
      this.#readings[gauge] = (this.#readings[gauge] ?? 0) + taken;
      this.#taken += taken;
    }
    this.#heights += heights;
    this.#sheets.set(sheet, { jobs: (this.#sheets.get(sheet)?.jobs ?? 0) + 1, newest: dimensions });
  }

  /** The time of everything that was added; null where nothing was. */
  rests(): Rests | null {
    return this.#rests;
  }

  /** An ordinary job is the newest by the sheet that is used most. Null where there is no job with a datum. */
  usage(): ShopUsage | null {
    const [commonest] = [...this.#sheets.values()].sort((a, b) => b.jobs - a.jobs);
    if (commonest === undefined || this.#heights === 0) return null;
    const { zeros, stations, lengths } = commonest.newest;
    const [front, rear] = [Math.min(...zeros), Math.max(...zeros)];
    if (zeros.length < 2 || stations.length === 0) return null;
    return {
      jobs: this.#jobs,
      readings: this.#readings,
      stations: [...stations]
        .sort(([a], [b]) => a - b)
        .map(([station, tolerance]) => ({ lever: (station - front) / (rear - front), tolerance })),
      lengths: { count: lengths.length, tolerance: lengths[0]?.[1] ?? 3 },
      readingsPerSetup: Math.max(1, Math.round(this.#taken / this.#heights)),
    };
  }
}
