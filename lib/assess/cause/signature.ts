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

/** The slip that is likelier than not, named, or null. */
export function signatureOf(slips: ReadonlyMap<Misset, number>): string | null {
  for (const [misset, probability] of slips) {
    if (probability >= 0.5) return SLIP_WORDS[misset];
  }
  return null;
}
