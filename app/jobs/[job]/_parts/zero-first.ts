import type { RoundVerdict } from '@/lib/assess';

/** From here on a mis-set zero gauge is the likelier story, and the round begins with it. */
export const ZERO_LIKELY_MISSET = 0.5;

/**
 * The checks in the order in which they are done: while a zero gauge is likely mis-set, its re-hang goes before
 * everything else, since a tilted datum stays tilted when another gauge is hung again.
 */
export function zeroFirst({ nextChecks, pZeroMisset, heights }: RoundVerdict): RoundVerdict['nextChecks'] {
  if (pZeroMisset < ZERO_LIKELY_MISSET) return nextChecks;
  const zeros = new Set(heights.filter(({ zero }) => zero).map(({ setup }) => setup));
  const isZero = ({ action, setup }: RoundVerdict['nextChecks'][number]) =>
    action === 'rehang' && setup !== null && zeros.has(setup);
  return [...nextChecks.filter(isZero), ...nextChecks.filter((check) => !isZero(check))];
}
