/** So a sheet marks the points that a strut tower gauge reads. */
export const STRUT_TOWER = 'strut tower';

/** What points are measured to, in the words of the trade; a sheet may use another word. */
export const FEATURES = [
  'hole',
  'slot',
  'bolt head',
  'nut',
  'stud',
  'weld nut',
  'pin',
  'bushing',
  'rivet',
  'flange',
  'edge',
  'corner',
  STRUT_TOWER,
] as const;

export type Feature = (typeof FEATURES)[number];
