import type { Dimension, Reading, Side, Stage } from '@/lib/measure';
import { gaugeError, RESOLUTION, TAPE_SCATTER, type GaugeModel } from './gauge';
import type { Random } from './random';
import type { AtWork } from './workshop';

/** Which round of which job. */
export interface RoundPlan {
  job: string;
  sheet: string;
  stage: Stage;
  attempt: number;
  at: number;
  clearance: number;
}

/** One setting and hanging of one gauge, while it is read. */
export interface OpenSetup {
  label: string;
  who: AtWork;
  gauge: GaugeModel;
  at: number;
  repeats: number;
}

const SETTING_MS = 45_000;
const READING_MS = 30_000;

/** What is written down in one round, in order: setups are counted, and the clock goes on. */
export class RoundRecord {
  readonly readings: Reading[] = [];
  readonly #plan: RoundPlan;
  readonly #random: Random;
  #clock: number;
  #setups = 0;

  constructor(plan: RoundPlan, random: Random) {
    this.#plan = plan;
    this.#random = random;
    this.#clock = plan.at;
  }

  setUp(who: AtWork, gauge: GaugeModel, repeats: number): OpenSetup {
    this.#setups += 1;
    this.#clock += SETTING_MS;
    const { stage, attempt } = this.#plan;
    const serial = String(this.#setups).padStart(2, '0');
    const label = `${stage === 'before' ? 'B' : 'A'}${attempt}-${serial}`;
    return { label, who, gauge, at: this.#clock, repeats };
  }

  /**
   * Reads one dimension as often as the setup repeats and returns the mean deviation as written down.
   * `deviation` is what a perfect eye would find with this gauge as it is set.
   */
  read(setup: OpenSetup, dimension: Dimension, deviation: number): number {
    const clearance = dimension.quantity === 'height' ? this.#plan.clearance : 0;
    const origin = dimension.nominal + clearance;
    let sum = 0;
    for (let repeat = 1; repeat <= setup.repeats; repeat++) {
      const value = this.#readOff(setup, origin + deviation);
      sum += value - origin;
      this.#write(setup, dimension, clearance, repeat, value);
    }
    return sum / setup.repeats;
  }

  /** Notes what a re-check proved of one side of a setup; centerline readings carry no cause. */
  note(setup: string, side: Side, cause: Reading['cause']): void {
    for (const reading of this.readings) {
      if (reading.setup === setup && reading.side === side) reading.cause = cause;
    }
  }

  #readOff({ who: { hand }, gauge }: OpenSetup, shown: number): number {
    const scatter = hand.repeatability * (gauge.kind === 'tape' ? TAPE_SCATTER : 1);
    const finest = RESOLUTION[gauge.kind];
    const step = finest === 0.1 && this.#random.chance(hand.readsHalves) ? 0.5 : finest;
    const read = shown + this.#random.normal(scatter);
    return Number((Math.round(read / step) * step).toFixed(1));
  }

  #write(setup: OpenSetup, dimension: Dimension, clearance: number, repeat: number, value: number): void {
    const { job, sheet, stage, attempt } = this.#plan;
    // Written out in full: spreading the dimension takes ten times as long, which a million readings would show.
    this.readings.push({
      quantity: dimension.quantity,
      point: dimension.point,
      side: dimension.side,
      section: dimension.section,
      station: dimension.station,
      zero: dimension.zero,
      nominal: dimension.nominal,
      tolerance: dimension.tolerance,
      line: 0,
      job,
      sheet,
      stage,
      attempt,
      takenAt: this.#clock,
      technician: setup.who.code,
      gauge: setup.gauge.tag,
      gaugeKind: setup.gauge.kind,
      setup: setup.label,
      clearance,
      repeat,
      value,
      cause: null,
    });
    this.#clock += READING_MS;
  }
}

/** What a gauge in a hand reads too much at any point but the zero stations, mm. */
export function heightBias(setup: OpenSetup): number {
  return setup.who.hand.bias + gaugeError(setup.gauge, setup.at);
}
