import type { Job } from '@/lib/measure';
import { repeatability } from './repeatability';
import { firstTimeOutcome, type CountedOutcome, type FirstTimeOutcome } from './right-first-time';
import type { SdEstimate } from './types';

/** What one technician did in one job. */
export interface MeasuredByHand extends Repeats {
  technician: string;
  readings: number;
  setups: number;
  /** Readings of heights, and of how many heights in how many hangings they are. */
  heightReadings: number;
  heights: number;
}

/** Repeats with the gauge untouched: readings beyond the first of each dimension, and their sum of squares, mm². */
export interface Repeats {
  df: number;
  ss: number;
}

/** What one gauge did in one job. */
export interface MeasuredByGauge {
  gauge: string;
  readings: number;
  /** Heights that it was hung for. */
  heights: number;
}

/** What of one job counts in the figures of hands, gauges and the shop. Additive, plain JSON. */
export interface Measured {
  hands: MeasuredByHand[];
  gauges: MeasuredByGauge[];
  outcome: FirstTimeOutcome | null;
}

export function measuredIn(job: Job): Measured {
  const hands = new Map<string, MeasuredByHand>();
  const gauges = new Map<string, MeasuredByGauge>();
  for (const { setups } of job.rounds) {
    for (const { technician, gauge, observations } of setups) {
      const hand = hands.get(technician) ?? noHand(technician);
      const own = gauges.get(gauge) ?? { gauge, readings: 0, heights: 0 };
      hands.set(technician, hand);
      gauges.set(gauge, own);
      hand.setups += 1;
      for (const { quantity, n, ss } of observations) {
        hand.readings += n;
        own.readings += n;
        hand.df += n - 1;
        hand.ss += ss;
        if (quantity !== 'height') continue;
        hand.heights += 1;
        hand.heightReadings += n;
        own.heights += 1;
      }
    }
  }
  return { hands: [...hands.values()], gauges: [...gauges.values()], outcome: firstTimeOutcome(job) };
}

const noHand = (technician: string): MeasuredByHand => ({
  technician,
  readings: 0,
  setups: 0,
  df: 0,
  ss: 0,
  heightReadings: 0,
  heights: 0,
});

/** `jobs` are those in which the technician hung at least one gauge. */
export type HandSums = MeasuredByHand & { jobs: number };

/** What several jobs come to. */
export interface SomeMeasured {
  hands: readonly HandSums[];
  gauges: readonly MeasuredByGauge[];
  outcomes: readonly CountedOutcome[];
}

/** The same over many jobs. */
export class MeasuredSums {
  readonly #hands = new Map<string, HandSums>();
  readonly #gauges = new Map<string, MeasuredByGauge>();
  readonly outcomes: CountedOutcome[] = [];

  static of(jobs: readonly Job[]): MeasuredSums {
    const sums = new MeasuredSums();
    for (const job of jobs) sums.add(measuredIn(job));
    return sums;
  }

  add({ hands, gauges, outcome }: Measured): void {
    this.addSums({
      hands: hands.map((hand) => ({ jobs: 1, ...hand })),
      gauges,
      outcomes: outcome === null ? [] : [outcome],
    });
  }

  /** What some jobs come to already. */
  addSums({ hands, gauges, outcomes }: SomeMeasured): void {
    for (const outcome of outcomes) this.outcomes.push(outcome);
    for (const hand of hands) {
      const sum = this.#hands.get(hand.technician) ?? { jobs: 0, ...noHand(hand.technician) };
      this.#hands.set(hand.technician, sum);
      for (const of of SUMMED) sum[of] += hand[of];
    }
    for (const { gauge, readings, heights } of gauges) {
      const sum = this.#gauges.get(gauge) ?? { gauge, readings: 0, heights: 0 };
      this.#gauges.set(gauge, sum);
      sum.readings += readings;
      sum.heights += heights;
    }
  }

  /** In the order of their codes. */
  hands(): HandSums[] {
    return [...this.#hands.values()].sort((a, b) => (a.technician < b.technician ? -1 : 1));
  }

  /** In the order of their asset tags. */
  gauges(): MeasuredByGauge[] {
    return [...this.#gauges.values()].sort((a, b) => (a.gauge < b.gauge ? -1 : 1));
  }

  hand(technician: string): HandSums | undefined {
    return this.#hands.get(technician);
  }

  /** Of one technician, or of the whole shop. */
  repeatability(technician?: string): SdEstimate {
    const own = technician === undefined ? this.hands() : [this.#hands.get(technician) ?? { df: 0, ss: 0 }];
    return repeatability(own.map(({ df, ss }) => ({ n: df + 1, ss })));
  }
}

const SUMMED = ['jobs', 'readings', 'setups', 'df', 'ss', 'heightReadings', 'heights'] as const;
