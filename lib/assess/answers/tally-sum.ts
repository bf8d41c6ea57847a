import { addTallies, type HabitTally } from '../habits';

/** So many tallies wait before they are summed: summing each at once would copy the sum every time. */
const WAITING = 64;

/** The tallies of one technician, added up as they come. */
export class TallySum {
  readonly #waiting: HabitTally[] = [];

  add(tally: HabitTally): void {
    this.#waiting.push(tally);
    if (this.#waiting.length >= WAITING) this.#waiting.splice(0, WAITING, addTallies(this.#waiting));
  }

  told(): HabitTally {
    return addTallies(this.#waiting);
  }
}
