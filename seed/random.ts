import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of random values that the seed number and the path alone decide. */
export interface Random {
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** A whole number from low to high, both included. */
  whole(low: number, high: number): number;
  /** Normal with mean 0. */
  normal(sd: number): number;
  chance(probability: number): boolean;
  /** One of the items, each as likely as the next; throws on an empty list. */
  pick<T>(items: readonly T[]): T;
  /** One of the items, by weight; throws on an empty list. */
  weighted<T>(items: readonly (readonly [T, number])[]): T;
  shuffled<T>(items: readonly T[]): T[];
}

/**
 * The stream at a path, for instance (seed, shop, job). Every job has a stream of its own, so that a change to
 * one job leaves all others as they were, and no stream has to be kept while a million readings go by.
 */
export function randomAt(seed: number, ...path: number[]): Random {
  const generator = xoroshiro128plus(path.reduce(mix, mix(0, seed)));
  const uniform = () => uniformFloat64(generator);

  const random: Random = {
    between: (low, high) => low + (high - low) * uniform(),
    whole: (low, high) => low + Math.floor((high - low + 1) * uniform()),
    // Box and Muller (1958), one of the pair.
    normal: (sd) => sd * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    chance: (probability) => uniform() < probability,
    pick: (items) => itemAt(items, Math.floor(items.length * uniform())),
    weighted: (items) => {
      let left = uniform() * items.reduce((sum, [, weight]) => sum + weight, 0);
      const found = items.find(([, weight]) => (left -= weight) < 0);
      return (found ?? itemAt(items, items.length - 1))[0];
    },
    shuffled: (items) => {
      const order = [...items];
      for (let i = order.length - 1; i > 0; i--) {
        const j = random.whole(0, i);
        const kept = itemAt(order, i);
        order[i] = itemAt(order, j);
        order[j] = kept;
      }
      return order;
    },
  };
  return random;
}

function itemAt<T>(items: readonly T[], index: number): T {
  if (index < 0 || index >= items.length) throw new RangeError('Nothing to choose from: the list is empty.');
  return items[index] as T;
}

/** Folds one number into a 32-bit state; the last step is the finaliser of MurmurHash3 (public domain). */
function mix(state: number, part: number): number {
  let h = Math.imul(state ^ part, 0x9e3779b1) + 0x7f4a7c15;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) | 0;
}
