import { z } from 'zod';
import { address, jobAddress } from '@/app/_words/address';
import { STAGES, type Round, type Stage } from '@/lib/measure';

/** How the address names a round: `before-1`. */
const name = z
  .string()
  .regex(/^(before|after)-[1-9]\d{0,3}$/)
  .transform((text) => {
    const [stage, attempt] = text.split('-');
    return { stage: z.enum(STAGES).parse(stage), attempt: Number(attempt) };
  });

/** The round that the address names; the last one where it names none. Null: there is no such round. */
export function roundNamed(rounds: readonly Round[], text: string | undefined): Round | null {
  if (text === undefined) return rounds.at(-1) ?? null;
  const asked = name.safeParse(text);
  if (!asked.success) return null;
  const { stage, attempt } = asked.data;
  return rounds.find((round) => round.stage === stage && round.attempt === attempt) ?? null;
}

export function evidenceAddress(
  job: string,
  round: { stage: Stage; attempt: number },
  anchor?: string,
): string {
  const page = address(`${jobAddress(job)}/evidence`, { round: `${round.stage}-${round.attempt}` });
  return anchor === undefined ? page : `${page}#${anchor}`;
}

/** The anchor of a height within the evidence; labels may hold any character, anchors may not. */
export function heightAnchor(height: { setup: string; point: string; side: string }): string {
  const text = encodeURIComponent(`${height.setup} ${height.point} ${height.side}`);
  return `height-${text.replaceAll('%', '_')}`;
}
