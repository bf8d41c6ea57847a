import { betaBinomial } from '@/lib/stats';
import type { CountedOutcome } from './outcome';

/** The least number of dimensions out of tolerance before the repair, for each class of hardness. */
const HARDNESS = [0, 1, 3, 6, 10] as const;

/**
 * The chance that a job is right first time at the shop's rate, given how hard it was: how many dimensions were out
 * before the repair (none, 1–2, 3–5, 6–9, 10 or more, not measured). The classes' rates are drawn towards the
 * shop's (beta-binomial), so that a class of few jobs says little.
 * Source of the adjustment: indirect standardisation, Spiegelhalter (2005), Statistics in Medicine 24, 1185–1202.
 */
export function chanceByHardness(
  outcomes: readonly CountedOutcome[],
): (outcome: CountedOutcome) => number | null {
  const counts = new Map<string, { x: number; n: number }>();
  let right = 0;
  for (const outcome of outcomes) {
    const name = hardness(outcome);
    const count = counts.get(name) ?? { x: 0, n: 0 };
    count.n += 1;
    if (outcome.right) {
      count.x += 1;
      right += 1;
    }
    counts.set(name, count);
  }
  const overall = outcomes.length === 0 ? null : right / outcomes.length;
  const { units } = betaBinomial([...counts.values()]);
  const chances = new Map([...counts.keys()].map((name, i) => [name, units[i]?.mean ?? overall]));
  return (outcome) => chances.get(hardness(outcome)) ?? overall;
}

/** Jobs that would be right first time at the shop's rate; null where the shop has none yet. */
export function expectedRight(
  own: readonly CountedOutcome[],
  chance: (outcome: CountedOutcome) => number | null,
): number | null {
  const chances = own.map(chance);
  if (own.length === 0) return null;
  return chances.every((p) => p !== null) ? chances.reduce((sum, p) => sum + p, 0) : null;
}

function hardness({ outBefore }: CountedOutcome): string {
  if (outBefore === null) return 'not measured';
  return String(HARDNESS.filter((least) => least <= outBefore).at(-1));
}
