import { type HabitTally, sumByTechnician } from '@/lib/assess/habits';

type Tallies = ReadonlyMap<string, HabitTally>;

/** Parts that are added to the sums at once: to add to all sums takes as long for one part as for many. */
const AT_ONCE = 16;

/**
 * Sums of habits by technician, added as parts come, but always in their order: so the last digit is the same, and few
 * are held at a time.
 */
export class TallySums {
  #sums = new Map<string, HabitTally>();
  readonly #early = new Map<number, Tallies>();
  /** Those that are next, in their order. */
  #waiting: Tallies[] = [];
  #next = 0;

  add(part: number, tallies: Tallies): void {
    this.#early.set(part, tallies);
    for (let next = this.#early.get(this.#next); next !== undefined; next = this.#early.get(this.#next)) {
      this.#early.delete(this.#next);
      this.#waiting.push(next);
      this.#next++;
    }
    if (this.#waiting.length >= AT_ONCE) this.#addWaiting();
  }

  /** In the order of the technicians' codes. */
  all(): Map<string, HabitTally> {
    if (this.#early.size > 0) throw new RangeError(`Part ${this.#next} was never added.`);
    this.#addWaiting();
    return this.#sums;
  }

  #addWaiting(): void {
    this.#sums = sumByTechnician([this.#sums, ...this.#waiting]);
    this.#waiting = [];
  }
}
