import { Tag } from '@/app/_look/tag';
import type { Section, Stage } from '@/lib/measure';
import type { OutcomeName } from '@/lib/access';

export const SECTION_NAMES: Record<Section, string> = { front: 'Front', center: 'Center', rear: 'Rear' };

export const STAGE_NAMES: Record<Stage, string> = { before: 'Before', after: 'After' };

export const OUTCOME_NAMES: Record<OutcomeName, string> = {
  right: 'Right first time',
  wrong: 'Not right first time',
  unknown: 'Not yet measured after repair',
};

const GLYPHS = { right: 'within', wrong: 'out', unknown: 'open' } as const;

/** How the job came out, in words with a shape. */
export function OutcomeTag({ outcome }: { outcome: OutcomeName }) {
  return <Tag name={GLYPHS[outcome]}>{OUTCOME_NAMES[outcome]}</Tag>;
}

/** A round as the trade says it: `Before, round 2`. */
export function roundName(stage: Stage, attempt: number): string {
  return `${STAGE_NAMES[stage]}, round ${attempt}`;
}
