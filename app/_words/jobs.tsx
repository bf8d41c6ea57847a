import { Tag } from '@/app/_look/tag';
import type { Section, Stage } from '@/lib/measure';
import type { OutcomeName } from '@/lib/access';
import { words } from '@/app/_words/words';

export const sectionName = (section: Section): string => words('terms')(`sections.${section}`);

/** The same within a sentence or a list: `front, rear`. */
export const sectionInSentence = (section: Section): string =>
  words('terms')(`sectionsInSentence.${section}`);

export const stageName = (stage: Stage): string => words('terms')(`stages.${stage}`);

export const outcomeName = (outcome: OutcomeName): string => words('terms')(`outcomes.${outcome}`);

const GLYPHS = { right: 'within', wrong: 'out', unknown: 'open' } as const;

/** How the job came out, in words with a shape. */
export function OutcomeTag({ outcome }: { outcome: OutcomeName }) {
  return <Tag name={GLYPHS[outcome]}>{outcomeName(outcome)}</Tag>;
}

/** A round as the trade says it: `Before, round 2`. */
export function roundName(stage: Stage, attempt: number): string {
  return words('terms')(`round.${stage}`, { attempt });
}
