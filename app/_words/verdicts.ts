import type { GlyphName } from '@/app/_look/glyph';
import type { Call } from '@/lib/assess';
import type { Cause } from '@/lib/measure';
import { words } from '@/app/_words/words';

/** Short, for tags and legends. None of them says that a structure is sound. */
export const callName = (call: Call): string => words('terms')(`calls.${call}.name`);

/** The same within a sentence or a list. */
export const callInSentence = (call: Call): string => words('terms')(`calls.${call}.inSentence`);

/** What follows from it, in one sentence. */
export const callSentence = (call: Call): string => words('terms')(`calls.${call}.sentence`);

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

/** The four classes within a sentence or a list: `gauge`, `neither`. */
export const causeInSentence = (cause: Cause): string => words('terms')(`causesInSentence.${cause}`);

/** The four classes as heads of a list. */
export const causeName = (cause: Cause): string => words('terms')(`causes.${cause}`);
