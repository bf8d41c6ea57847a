import type { Reading } from '@/lib/measure';
import type { GaugeModel } from './gauge';
import type { Body } from './geometry';
import { hangOther, hangZero, type Datum, type Hanging, type Hung } from './heights';
import { drawRepeats, readLengths } from './lengths';
import type { Random } from './random';
import { RoundRecord, type RoundPlan } from './record';
import type { VehicleSheet } from './sheet';
import type { HeightTruth, RoundTruth } from './truth';
import { gaugesOf, someoneAtWork, type AtWork, type Workshop } from './workshop';

/** Chance that a gauge is hung again: within tolerance, out of it, and so far out that nobody believes it. */
const REHANG = { within: 0.05, out: 0.5, absurd: 0.95 };
const ABSURD_MM = 40;
const MOST_REHANGS = 2;
const BY_ANOTHER = 0.3;
/** Chance that both zero gauges are hung again: usually, and where several heights are out together. */
const REHANG_ZEROS = { usually: 0.01, several: 0.12 };
/** Share of re-checked heights whose cause was noted. */
const NOTED = 0.25;

/** Measures a vehicle once, and returns what was written down with what stood behind it. */
export function measureRound(
  workshop: Workshop,
  sheet: VehicleSheet,
  body: Body,
  plan: RoundPlan,
  who: AtWork,
  random: Random,
): { readings: Reading[]; truth: RoundTruth } {
  const record = new RoundRecord(plan, random);
  const measureLengths = () => readLengths(workshop, sheet, body, who, record, random);
  const measureHeights = () =>
    new HeightRound(
      workshop,
      { sheet, body, clearance: plan.clearance, record, random },
      who,
      plan.at,
    ).measure();

  let heights: HeightTruth[];
  let lengths;
  if (who.hand.heightsFirst) {
    heights = measureHeights();
    lengths = measureLengths();
  } else {
    lengths = measureLengths();
    heights = measureHeights();
  }
  const { stage, attempt, at } = plan;
  return {
    readings: record.readings,
    truth: { stage, attempt, technician: who.code, takenAt: at, heights, lengths },
  };
}

/** The heights of one round: zero gauges, the others level with them, then what is hung again. */
class HeightRound {
  readonly #workshop: Workshop;
  readonly #on: Hanging;
  readonly #who: AtWork;
  readonly #at: number;
  readonly #gauges: readonly GaugeModel[];
  /** By station: every hanging, in order. */
  readonly #hung = new Map<number, Hung[]>();

  constructor(workshop: Workshop, on: Hanging, who: AtWork, at: number) {
    this.#workshop = workshop;
    this.#on = on;
    this.#who = who;
    this.#at = at;
    this.#gauges = this.#chooseGauges();
  }

  measure(): HeightTruth[] {
    let datum = this.#hangAll();
    const out = this.#others().filter((station) => this.#worst(station) > this.#on.sheet.tolerance).length;
    if (this.#on.random.chance(out > 2 ? REHANG_ZEROS.several : REHANG_ZEROS.usually))
      datum = this.#hangAll();
    for (const station of this.#others()) this.#rehang(station, datum);
    return this.#withFindings();
  }

  #hangAll(): Datum {
    const [a, b] = this.#on.sheet.zeros;
    const datum: Datum = [this.#hangZero(a).setting, this.#hangZero(b).setting];
    for (const station of this.#others()) this.#hangOther(station, this.#who, datum);
    return datum;
  }

  #rehang(station: number, datum: Datum): void {
    const { random, sheet } = this.#on;
    for (let times = 0; times < MOST_REHANGS; times++) {
      const worst = this.#worst(station);
      const chance = worst > ABSURD_MM ? REHANG.absurd : worst > sheet.tolerance ? REHANG.out : REHANG.within;
      if (!random.chance(chance)) return;
      const who = random.chance(BY_ANOTHER)
        ? someoneAtWork(this.#workshop, this.#at, random, this.#who.code)
        : this.#who;
      this.#hangOther(station, who, datum);
    }
  }

  #hangZero(station: number): Hung {
    return this.#keep(station, hangZero(this.#on, station, this.#setUp(station, this.#who)));
  }

  #hangOther(station: number, who: AtWork, datum: Datum): void {
    this.#keep(station, hangOther(this.#on, station, this.#setUp(station, who), datum));
  }

  #setUp(station: number, who: AtWork) {
    const { record, random } = this.#on;
    const gauge = this.#gauges[station];
    if (gauge === undefined) throw new RangeError(`No gauge hangs at station number ${station}.`);
    const brief = this.#workshop.reading === 'brief';
    return record.setUp(who, gauge, brief && random.chance(0.6) ? 1 : drawRepeats(random));
  }

  #keep(station: number, hung: Hung): Hung {
    this.#hung.set(station, [...(this.#hung.get(station) ?? []), hung]);
    return hung;
  }

  #others(): number[] {
    const { stations } = this.#on.sheet;
    return stations.flatMap((station, index) => (station.zero ? [] : [index]));
  }

  /** Largest deviation on either side of the last hanging, mm. */
  #worst(station: number): number {
    const last = this.#hung.get(station)?.at(-1)?.heights ?? [];
    return Math.max(0, ...last.map((height) => Math.abs(height.deviation)));
  }

  /** A gauge for each station: two stay at the zero stations, the others move on where there are not enough. */
  #chooseGauges(): GaugeModel[] {
    const { sheet, random } = this.#on;
    const [first, second, ...moving] = random.shuffled(gaugesOf(this.#workshop, 'centering'));
    const strut = gaugesOf(this.#workshop, 'strut')[0];
    if (first === undefined || second === undefined || moving.length === 0) {
      throw new Error('A round needs at least three centering gauges.');
    }
    let moved = 0;
    return sheet.stations.map((station, index) => {
      if (index === sheet.zeros[0]) return first;
      if (index === sheet.zeros[1]) return second;
      if (station.hangs === 'strut' && strut !== undefined) return strut;
      return moving[moved++ % moving.length] ?? first;
    });
  }

  /** Marks what was hung again, and notes some of the findings in the record. */
  #withFindings(): HeightTruth[] {
    const { random, record } = this.#on;
    const all: HeightTruth[] = [];
    for (const hangings of this.#hung.values()) {
      hangings.forEach(({ heights }, index) => {
        const superseded = index < hangings.length - 1;
        const labelled = superseded && random.chance(NOTED);
        for (const height of heights) {
          all.push({ ...height, superseded, labelled });
          if (labelled) record.note(height.setup, height.side, height.cause);
        }
      });
    }
    return all;
  }
}
