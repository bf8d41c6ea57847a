import type { Learned } from '../cause/learned';

const numbers = new WeakMap<Learned, number>();
let last = 0;

/** A number that goes to a thread with what was learned, by which it knows it again. */
export function numberOf(learned: Learned): number {
  let number = numbers.get(learned);
  if (number === undefined) numbers.set(learned, (number = ++last));
  return number;
}

/**
 * What was learned, on the thread that it came to. It comes with each task, a new object every time: for each of them all
 * would be laid out anew that is kept by it (what setups can be, see `cause/settings.ts`), a seventh of learning. So the
 * first that came stands for all that are the same.
 */
export class SameLearned {
  #number = 0;
  #learned: Learned | null = null;

  /** @param number its number on the one thread that asks. */
  of(number: number, learned: Learned): Learned {
    if (this.#learned === null || number !== this.#number) [this.#number, this.#learned] = [number, learned];
    return this.#learned;
  }
}
