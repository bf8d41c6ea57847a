import type { Misset } from './learned';

/** The recognisable slips in the shop's words. A mis-set of no known size has no signature. */
export const SLIP_WORDS: Record<Misset, string | null> = {
  both: null,
  left: null,
  right: null,
  'clearance-omitted': 'clearance left out',
  'clearance-twice': 'clearance added twice',
  'other-row': 'another row of the sheet',
  'other-mark': 'another fixed mark',
  'tape-10': 'tape read 10 mm off',
  'tape-100': 'tape read 100 mm off',
  'sides-exchanged': 'left and right exchanged',
  'digits-exchanged': 'two digits exchanged',
};

/** A slip is named from this probability on: it says where to look first, not what happened. */
const NAMED = 0.33;

/** The likeliest recognisable slip, named where it is likely enough, or null. */
export function signatureOf(slips: ReadonlyMap<Misset, number>): string | null {
  let best: string | null = null;
  let top = NAMED;
  for (const [misset, probability] of slips) {
    const words = SLIP_WORDS[misset];
    if (words === null || probability < top) continue;
    best = words;
    top = probability;
  }
  return best;
}
