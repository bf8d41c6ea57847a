import type { GlyphName } from '@/app/_look/glyph';
import type { Call } from '@/lib/assess';
import type { Cause } from '@/lib/measure';

/** Short, for tags and legends. None of them says that a structure is sound. */
export const CALL_NAMES: Record<Call, string> = {
  'nothing-found': 'Neither',
  'likely-gauge': 'Likely gauge',
  'likely-body': 'Likely body',
  'likely-both': 'Likely both',
  undecided: 'Undecided',
};

/** What follows from it, in one sentence. */
export const CALL_SENTENCES: Record<Call, string> = {
  'nothing-found':
    'Neither the setting nor the body is off by more than the tolerance, as far as these readings tell.',
  'likely-gauge': 'Likely the gauge: re-hang it and read again.',
  'likely-body': 'Likely the body: confirm it with a re-hang before anybody pulls.',
  'likely-both': 'Likely gauge and body both: re-hang the gauge and read again.',
  undecided: 'The readings so far do not tell gauge from body: re-hang and read again.',
};

export const CALL_GLYPHS: Record<Call, GlyphName> = {
  'nothing-found': 'neither',
  'likely-gauge': 'gauge',
  'likely-body': 'body',
  'likely-both': 'both',
  undecided: 'undecided',
};

/** The order in which they are explained. */
export const CALLS: readonly Call[] = [
  'nothing-found',
  'likely-gauge',
  'likely-body',
  'likely-both',
  'undecided',
];

/** The four classes as heads of a list. */
export const CAUSE_NAMES: Record<Cause, string> = {
  neither: 'Neither',
  gauge: 'Gauge alone',
  body: 'Body alone',
  both: 'Gauge and body',
};
