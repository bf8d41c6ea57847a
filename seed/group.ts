import type { Reading } from '@/lib/measure';
import { DayBook, dayOfJob, workingDays } from './calendar';
import { groupWorkshop } from './group-workshop';
import { runJob } from './job';
import { randomAt } from './random';
import { LAST_DAY, TIME_ZONE } from './stories';
import type { Workshop } from './workshop';

const YEARS = 10;
const FIRST_DAY = `${Number(LAST_DAY.slice(0, 4)) - YEARS}${LAST_DAY.slice(4)}`;
/** A batch is handed on when it has at least so many readings. */
const BATCH = 5_000;

/** Jobs of one shop: more would not find a slot, at one round at a time. */
const MOST_JOBS = 4_500;

export interface GroupPlan {
  shops: number;
  /** Of all shops together, over ten years that end with the demo shop's year. */
  jobs: number;
  /** Of all shops together. */
  technicians: number;
  seed: number;
  /**
   * Readings a job and setups they were read in, about: `brief` 52 in 24, `usual` 84 in 33, `thorough` 125 in 50, much
   * as in the demo shop.
   */
  reading?: Workshop['reading'];
}

/** Readings of whole jobs of one shop, oldest job first; `line` counts as in one file a shop. */
export interface GroupBatch {
  /** `S01`, `S02`, … */
  shop: string;
  readings: Reading[];
}

/**
 * A group of shops over ten years, batch by batch, for measuring how the program scales: nothing is kept but the
 * batches under way, so memory does not grow with the number of jobs. No stories are told. Job numbers,
 * technicians and gauges are unique in the group. Throws a RangeError for a plan that leaves a
 * shop without technicians, or with more jobs than its days have room for.
 */
export async function* generateGroup(plan: GroupPlan): AsyncGenerator<GroupBatch, void, undefined> {
  const { shops, jobs, technicians, seed } = plan;
  if (shops < 1 || technicians < shops) {
    throw new RangeError(
      `${technicians} technicians cannot staff ${shops} shops: give each shop one at least.`,
    );
  }
  if (jobs > MOST_JOBS * shops) {
    throw new RangeError(
      `${jobs} jobs are more than ${shops} shops can measure in ten years: plan ${MOST_JOBS} a shop at most.`,
    );
  }
  const days = tenYears();
  const running = Array.from({ length: shops }, (_, index) => {
    const staff = Math.floor(((index + 1) * technicians) / shops) - Math.floor((index * technicians) / shops);
    return new RunningShop(index, groupWorkshop(seed, index, staff, plan.reading ?? 'brief'), days);
  });
  for (let index = 0; index < jobs; index++) {
    const shop = running[index % shops];
    if (shop === undefined) continue;
    const batch = shop.take(index, jobs, seed);
    if (batch !== null) yield await Promise.resolve(batch);
  }
  for (const shop of running) {
    const rest = shop.rest();
    if (rest !== null) yield rest;
  }
}

/** Working days of the ten years: counted once, since time zones are slow to ask. */
let workingDaysOfGroup: readonly number[] | null = null;
function tenYears(): readonly number[] {
  return (workingDaysOfGroup ??= workingDays(FIRST_DAY, LAST_DAY, TIME_ZONE));
}

/** One shop at work: its days, and the batch that is being filled. */
class RunningShop {
  readonly #name: string;
  readonly #index: number;
  readonly #workshop: Workshop;
  readonly #days: readonly number[];
  readonly #book: DayBook;
  #batch: Reading[] = [];
  #jobs = 0;
  #line = 1;

  constructor(index: number, workshop: Workshop, days: readonly number[]) {
    this.#index = index;
    this.#name = `S${String(index + 1).padStart(2, '0')}`;
    this.#workshop = workshop;
    this.#days = days;
    this.#book = new DayBook(days);
  }

  /** Runs a job; hands on the batch when it is full. */
  take(index: number, jobs: number, seed: number): GroupBatch | null {
    const random = randomAt(seed, 1, this.#index, index);
    const day = dayOfJob(index, jobs, this.#days.length, random.between(0, 1));
    this.#jobs += 1;
    this.#book.forgetBefore(day);
    const number = `${this.#name}-${String(this.#jobs).padStart(5, '0')}`;
    for (const reading of runJob(this.#workshop, number, day, this.#book, random).readings) {
      this.#line += 1;
      reading.line = this.#line;
      this.#batch.push(reading);
    }
    return this.#batch.length < BATCH ? null : this.rest();
  }

  /** What is left of the batch; null where nothing is. */
  rest(): GroupBatch | null {
    if (this.#batch.length === 0) return null;
    const readings = this.#batch;
    this.#batch = [];
    return { shop: this.#name, readings };
  }
}
