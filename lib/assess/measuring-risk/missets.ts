import type { Learned } from '@/lib/assess/cause/learned';
import { MISSETS } from '@/lib/assess/cause/learned';
import { SIZE_BANDS } from '@/lib/assess/cause/sizes';
import type { Misset } from './types';

/** What a slip of recognisable size (clearance, tape, another row or mark) adds, as an sd: tens of millimetres. */
const SLIP_SD = 60;

/**
 * The mis-sets of a hand as two kinds: those of unknown size (root mean square of the learned size bands), and the slips of
 * recognisable size, which go up to a whole clearance. Told apart, since one normal for both would put ordinary mis-sets
 * at tens of millimetres.
 */
export function missetsOf(learned: Learned, missetRate: number): Misset[] {
  const unknown = learned.missets.both + learned.missets.left + learned.missets.right;
  const all = MISSETS.reduce((sum, kind) => sum + learned.missets[kind], 0);
  const share = all > 0 ? unknown / all : 1;
  return [
    { chance: missetRate * share, sd: missetSd(learned) },
    { chance: missetRate * (1 - share), sd: SLIP_SD },
  ];
}

/** Root mean square of the sizes of a mis-set of unknown size, mm. */
export function missetSd(learned: Learned): number {
  const total = SIZE_BANDS.reduce((sum, _, i) => sum + (learned.missetSizes[i] ?? 0), 0);
  const squares = SIZE_BANDS.reduce(
    (sum, { centre, sd }, i) => sum + (learned.missetSizes[i] ?? 0) * (centre ** 2 + sd ** 2),
    0,
  );
  return total > 0 ? Math.sqrt(squares / total) : 0;
}

/** An ordinary setting and every kind of mis-set: chances that add up to one, and the variance that each adds. */
export function settingsOf(missets: readonly Misset[]): { chance: number; variance: number }[] {
  const wrong = missets.reduce((sum, { chance }) => sum + chance, 0);
  return [
    { chance: 1 - wrong, variance: 0 },
    ...missets.filter(({ chance }) => chance > 0).map(({ chance, sd }) => ({ chance, variance: sd * sd })),
  ];
}
