import { LINES, type Line, type Variances } from './types';

const WORDS: Record<Line, string> = {
  part: 'parts',
  operator: 'operators',
  'part:operator': 'operators from part to part',
  repeat: 'repeats',
};

/** What a reader must know of the components, in sentences. */
export function trialNotes(anova: Variances | null, repeats: number | null): string[] {
  const notes: string[] = [];
  if (repeats === 1) {
    notes.push(
      'Every operator read every part once, so differences of operators from part to part and repeatability ' +
        'cannot be told apart; they are given together as the repeat variance.',
    );
  }
  for (const line of LINES) {
    const variance = anova?.[line] ?? 0;
    if (variance >= 0) continue;
    notes.push(
      `The variance of the ${WORDS[line]} comes out negative (${variance.toPrecision(3)}): they differ less than ` +
        'the scatter below them would make them differ by chance. A variance cannot be negative; this says that it ' +
        'is too small to be seen in this trial, not that it is nil, and its upper limit says how large it may be. ' +
        'The ANOVA estimate is put at 0 and the others stay; REML puts it at 0 and estimates the others anew.',
    );
  }
  return notes;
}
