import { told } from '@/app/_words/told';
import { HABIT_TEXTS, type HabitKey } from '@/lib/assess/habits';

/** What a habit is called, in the reader's language. For the server: browsers have no book of phrases. */
export const habitName = (habit: HabitKey): string => told(HABIT_TEXTS[habit].name);
