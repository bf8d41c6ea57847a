import type { GlyphName } from '@/app/_look/glyph';
import { CAUSES, type Cause } from '@/lib/measure';

/** The class that a height is told as: one of the four where the readings bear it out, undecided otherwise. */
export type Verdict = Cause | 'undecided';

/** A class is named from this probability on; below it the height is undecided. */
export const DECIDED_FROM = 0.8;

export function verdictOf(p: Record<Cause, number>): Verdict {
  return CAUSES.find((cause) => p[cause] >= DECIDED_FROM) ?? 'undecided';
}

/** Short, for tags and legends. None of them says that a structure is sound. */
export const VERDICT_NAMES: Record<Verdict, string> = {
  neither: 'Neither',
  gauge: 'Likely gauge',
  body: 'Likely body',
  both: 'Gauge and body',
  undecided: 'Undecided',
};

/** The four classes as heads of a list. */
export const CAUSE_NAMES: Record<Cause, string> = {
  neither: 'Neither',
  gauge: 'Gauge alone',
  body: 'Body alone',
  both: 'Gauge and body',
};

/** What follows from it, in one sentence. */
export const VERDICT_SENTENCES: Record<Verdict, string> = {
  neither:
    'Neither the setting nor the body is off by more than the tolerance, as far as these readings tell.',
  gauge: 'Likely the gauge: re-hang it and read again.',
  body: 'Likely the body: confirm it with a re-hang before anybody pulls.',
  both: 'Gauge and body both: re-hang the gauge and read again, the body is likely off as well.',
  undecided: 'Undecided: the readings so far do not tell gauge from body.',
};

export const VERDICT_GLYPHS: Record<Verdict, GlyphName> = {
  neither: 'neither',
  gauge: 'gauge',
  body: 'body',
  both: 'both',
  undecided: 'undecided',
};
