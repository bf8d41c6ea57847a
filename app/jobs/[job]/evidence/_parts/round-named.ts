import { z } from 'zod';
import { STAGES, type Round } from '@/lib/measure';

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
