import type { Query } from '@/app/_words/address';
import { habitsAnswer, habitsWithin, spanChoices, type Viewer } from '@/lib/access';
import type { HabitsAnswer, SpanChoices } from '@/lib/assess/answers';
import { habitQuestion, isSpan, spanOf, type HabitQuestion } from './habit-question';

export interface AskedHabits {
  question: HabitQuestion;
  notes: string[];
  choices: SpanChoices;
  /** Null before the first answer. */
  cells: HabitsAnswer | null;
}

/** The habits of the readings that an address asks for; of all of them where it names none. */
export async function askedHabits(viewer: Viewer, query: Query): Promise<AskedHabits> {
  const { question, notes } = habitQuestion(query);
  const choices = await spanChoices(viewer);
  const whole = await habitsAnswer(viewer);
  const cells =
    whole === null || !isSpan(question) ? whole : await habitsWithin(viewer, spanOf(question, choices));
  return { question, notes, choices, cells };
}
