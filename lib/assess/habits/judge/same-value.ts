import { normalBetween, normalCdf } from '@/lib/stats/distributions';
import { remembering } from '@/lib/stats/numeric/remembering';

export interface Rounding {
  /** Sd of a reading with the gauge untouched, mm. */
  sd: number;
  /** Step that readings are taken to, mm. */
  fine: number;
  /** The coarser step that a share of the readings is taken to, mm. */
  coarse: number;
  coarseShare: number;
}

/** Places of the true value within one coarse step. */
const PHASES = 20;

/**
 * Chance that n readings with the gauge untouched all show the same value.
 *
 * The true value lies anywhere within a coarse step; each reading adds a normal error and is taken to the fine step,
 * or with `coarseShare` to the coarse one. The mean over 20 phases of Σ P(value)ⁿ over the values; exact but for the
 * phases, whose mean is right to 1e-6 where the sd is a fifth of the fine step or more.
 */
export const sameValueChance = (n: number, { sd, fine, coarse, coarseShare }: Rounding): number =>
  remembered(n, sd, fine, coarse, coarseShare);

const remembered = remembering((n: number, sd: number, fine: number, coarse: number, coarseShare: number) => {
  const steps = Math.round(coarse / fine);
  const reach = Math.ceil((8 * sd) / fine) + steps + 1;
  let sum = 0;
  for (let phase = 0; phase < PHASES; phase++) {
    const truth = ((phase + 0.5) / PHASES) * coarse;
    const below = (mm: number): number => normalCdf((mm - truth) / sd);
    const first = Math.round(truth / fine) - reach;
    let edge = below((first - 0.5) * fine);
    for (let step = first; step <= first + 2 * reach; step++) {
      const next = below((step + 0.5) * fine);
      const onCoarse = coarseShare > 0 && step % steps === 0;
      const coarsely = onCoarse ? below(step * fine + coarse / 2) - below(step * fine - coarse / 2) : 0;
      sum += ((1 - coarseShare) * (next - edge) + coarseShare * coarsely) ** n;
      edge = next;
    }
  }
  return sum / PHASES;
});

/**
 * The most that readings in halves can fall on whole millimetres by chance: all true values whole, scatter `sd`.
 */
export function mostOnWhole(sd: number): number {
  let sum = 0;
  for (let whole = -Math.ceil(8 * sd) - 1; whole <= Math.ceil(8 * sd) + 1; whole++) {
    sum += normalBetween((whole - 0.25) / sd, (whole + 0.25) / sd);
  }
  return Math.min(1, sum);
}
