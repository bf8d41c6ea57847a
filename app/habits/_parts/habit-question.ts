import { z } from 'zod';
import {
  askedMonths,
  heldMonths,
  isHeld,
  type AskedMonths,
  type HeldMonths,
} from '@/app/_figures/stretch/asked-months';
import { stretchWords } from '@/app/_figures/stretch/stretch-words';
import { address, type Query } from '@/app/_words/address';
import { asked } from '@/app/_words/asked';
import { words } from '@/app/_words/words';
import type { SpanChoices } from '@/lib/assess/answers';
import type { HabitKey } from '@/lib/assess/habits';

/** What the habits are held to. */
export interface HabitQuestion extends AskedMonths {
  sheet: string | undefined;
  /** Whose are shown; all are compared with each other whoever is shown. */
  technician: string | undefined;
}

const name = z.string().max(100);

/** What the address asks for; a part that cannot be understood is left out, and a sentence says so. */
export function habitQuestion(query: Query): { question: HabitQuestion; notes: string[] } {
  const months = askedMonths(query);
  const { read, notes } = asked<'sheet' | 'technician'>(query, (_, part) =>
    words('habits')(`filter.tooLong.${part}`),
  );
  return {
    question: { ...months.asked, sheet: read('sheet', name), technician: read('technician', name) },
    notes: [...months.notes, ...notes],
  };
}

/** Whether other readings count than all of them. */
export const isSpan = (question: HabitQuestion): boolean => isHeld(question) || question.sheet !== undefined;

/** What is asked of the readings, with the months told one by one. */
export const spanOf = (
  question: HabitQuestion,
  { months }: SpanChoices,
): HeldMonths & { sheet: string | undefined } => ({
  ...heldMonths(question, months),
  sheet: question.sheet,
});

/** Which jobs are looked at where not all are. */
export function spanNote(question: HabitQuestion, choices: SpanChoices): string {
  const t = words('habits');
  const time = stretchWords(heldMonths(question, choices.months), choices.months);
  return question.sheet === undefined
    ? t('filter.note', { time })
    : t('filter.noteSheet', { time, sheet: question.sheet });
}

/** Where a habit, or one technician's evidence for it, is told of the same readings. */
export type HabitPlace = (habit: HabitKey, technician?: string) => string;

export const placesOf =
  ({ last, from, to, sheet }: HabitQuestion): HabitPlace =>
  (habit, technician) =>
    address(`/habits/${habit}`, { last, from, to, sheet, technician });
