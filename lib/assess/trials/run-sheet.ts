import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { requireWhole } from '@/lib/stats/arguments';

/** One hanging of the run sheet. The sheet's value is not on it: readings are entered blind. */
export interface RunLine {
  /** From 1, in the order of the work. */
  order: number;
  person: string;
  point: string;
  setup: string;
  readings: number;
}

export interface RunSheetInput {
  points: readonly string[];
  people: readonly string[];
  setups: number;
  readings: number;
  /** The same seed gives the same sheet. */
  seed: number;
}

/**
 * The order of a trial: balanced, random, and the same for the same seed.
 *
 * Every round of hangings holds each person at each point once. In a round the points go round among the people (a cyclic
 * Latin square with random labels), so that no two people stand at one point at a time where there are points enough, and
 * in every slot another person begins: warm-up, tiredness and light fall on all alike.
 * RangeError for no points or people, names that occur twice, or counts below 1.
 * Source: Cochran and Cox (1957), Experimental Designs, chapter 4, for the square and its randomisation.
 */
export function runSheet({ points, people, setups, readings, seed }: RunSheetInput): RunLine[] {
  requireWhole('The number of hangings', setups, 1);
  requireWhole('The number of readings of a hanging', readings, 1);
  requireNames('point', points);
  requireNames('person', people);
  const random = xoroshiro128plus(seed);
  const shuffled = <T>(items: readonly T[]): T[] => {
    const list = [...items];
    for (let i = list.length - 1; i > 0; i--) {
      const j = uniformInt(random, 0, i);
      [list[i], list[j]] = [list[j] as T, list[i] as T];
    }
    return list;
  };
  const order = shuffled(people);
  const lines: RunLine[] = [];
  for (let round = 0; round < setups; round++) {
    const columns = shuffled(points);
    const rows = shuffled(people);
    const shifts = shuffled(points.map((_, i) => i));
    for (const [slot, shift] of shifts.entries()) {
      const first = (round * points.length + slot) % people.length;
      for (let turn = 0; turn < people.length; turn++) {
        const person = order[(first + turn) % people.length] ?? '';
        const point = columns[(rows.indexOf(person) + shift) % points.length] ?? '';
        lines.push({ order: lines.length + 1, person, point, setup: String(round + 1), readings });
      }
    }
  }
  return lines;
}

function requireNames(what: string, names: readonly string[]): void {
  if (names.length === 0) throw new RangeError(`A run sheet needs one ${what} at least.`);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) throw new RangeError(`The ${what} ${twice} is on the list twice.`);
}
