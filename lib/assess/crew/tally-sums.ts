import { type HabitTally, sumByTechnician } from '../habits';

/**
 * Sums of habits by technician, added part by part as parts come, but always in their order: so the last digit is the
 * same, and few are held at a time.
 */
export class TallySums {
  #sums = new Map<string, HabitTally>();
  readonly #early = new Map<number, ReadonlyMap<string, HabitTally>>();
  #next = 0;

  add(part: number, tallies: ReadonlyMap<string, HabitTally>): void {
    this.#early.set(part, tallies);
    for (let next = this.#early.get(this.#next); next !== undefined; next = this.#early.get(this.#next)) {
      this.#early.delete(this.#next);
      this.#sums = sumByTechnician([this.#sums, next]);
      this.#next++;
    }
  }

  /** In the order of the technicians' codes. */
  all(): Map<string, HabitTally> {
    if (this.#early.size > 0) throw new RangeError(`Part ${this.#next} was never added.`);
    return this.#sums;
  }
}
