import type { Reading, Stage } from '@/lib/measure';
import type { DayBook } from './calendar';
import { damageVehicle } from './damage';
import type { Body } from './geometry';
import type { Random } from './random';
import { repairLeftover, repairVehicle, type RepairedVehicle } from './repair';
import { rightFirstTime } from './right-first-time';
import { measureRound } from './round';
import type { VehicleSheet } from './sheet';
import type { JobTruth } from './truth';
import { atWork, someoneAtWork, type Workshop } from './workshop';

const CLEARANCES: readonly (readonly [number, number])[] = [
  [0, 34],
  [100, 42],
  [50, 7],
  [80, 6],
  [120, 6],
  [150, 5],
];
/** Share of vehicles that are measured twice before the repair. */
const SECOND_BEFORE = 0.08;
/** Share of vehicles that are measured again when a round after the repair is out of tolerance. */
const AGAIN_AFTER = 0.9;
const MOST_AFTER = 3;
const REPAIR_DAYS = [3, 8] as const;
/** The one who measured before measures after, too. */
const SAME_HAND = 0.6;

/** One vehicle from the first round to the last that its days allow. */
export function runJob(
  workshop: Workshop,
  job: string,
  firstDay: number,
  book: DayBook,
  random: Random,
): { readings: Reading[]; truth: JobTruth } {
  return new JobRun(workshop, job, firstDay, book, random).run();
}

class JobRun {
  readonly #sheet: VehicleSheet;
  readonly #readings: Reading[] = [];
  readonly #truth: JobTruth;
  #day: number;
  #who: string | null = null;

  constructor(
    private readonly workshop: Workshop,
    private readonly job: string,
    firstDay: number,
    private readonly book: DayBook,
    private readonly random: Random,
  ) {
    this.#sheet = random.pick(workshop.sheets);
    this.#day = firstDay;
    this.#truth = {
      job,
      sheet: this.#sheet.name,
      zone: 'none',
      incomplete: false,
      rounds: [],
      rightFirstTime: null,
    };
  }

  run(): { readings: Reading[]; truth: JobTruth } {
    const { random } = this;
    const vehicle = damageVehicle(this.#sheet, random);
    this.#truth.zone = vehicle.zone;
    if (this.#measure('before', 1, vehicle.body) && random.chance(SECOND_BEFORE)) {
      this.#day += 1;
      this.#measure('before', 2, vehicle.body);
    }

    this.#day += random.whole(...REPAIR_DAYS);
    const slot = this.book.book(this.#day);
    if (slot !== null) {
      this.#truth.incomplete = random.chance(this.workshop.leftoverShare(slot.at));
      const repaired = repairVehicle(vehicle, this.#truth.incomplete, random);
      this.#truth.incomplete = repaired.leftover.some(({ L, R }) => L || R);
      this.#measureAfter(repaired, slot);
    }
    return { readings: this.#readings, truth: this.#truth };
  }

  /** Measures until every dimension is within tolerance, or nobody asks for more. */
  #measureAfter(first: RepairedVehicle, slot: { day: number; at: number }): void {
    let repaired = first;
    let booked: typeof slot | null = slot;
    for (let attempt = 1; attempt <= MOST_AFTER && booked !== null; attempt++) {
      this.#measureAt(booked, 'after', attempt, repaired.body);
      const round = this.#truth.rounds.at(-1);
      if (round === undefined) return;
      const right = rightFirstTime(this.#sheet, round, this.#readings, repaired.body);
      if (attempt === 1) this.#truth.rightFirstTime = right;
      if (right.recorded || !this.random.chance(AGAIN_AFTER)) return;
      repaired = repairLeftover(repaired, this.random);
      booked = this.book.book(this.#day + 1);
    }
  }

  /** False where the days are over. */
  #measure(stage: Stage, attempt: number, body: Body): boolean {
    const slot = this.book.book(this.#day);
    if (slot !== null) this.#measureAt(slot, stage, attempt, body);
    return slot !== null;
  }

  #measureAt(slot: { day: number; at: number }, stage: Stage, attempt: number, body: Body): void {
    const { workshop, random } = this;
    const same = this.#who !== null && random.chance(SAME_HAND) ? atWork(workshop, this.#who, slot.at) : null;
    const who = same ?? someoneAtWork(workshop, slot.at, random);
    const clearance = random.weighted(CLEARANCES);
    const plan = { job: this.job, sheet: this.#sheet.name, stage, attempt, at: slot.at, clearance };
    const { readings, truth } = measureRound(workshop, this.#sheet, body, plan, who, random);
    this.#readings.push(...readings);
    this.#truth.rounds.push(truth);
    this.#who = who.code;
    this.#day = slot.day;
  }
}
