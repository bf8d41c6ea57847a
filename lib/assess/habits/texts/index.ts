import type { HabitKey } from '../keys';
import { LENGTH_TEXTS } from './lengths';
import { READING_TEXTS } from './readings';
import { SETTING_TEXTS } from './settings';
import type { HabitText } from './text';

export type { HabitText } from './text';

/** Each habit in plain words. */
export const HABIT_TEXTS: Record<HabitKey, HabitText> = {
  ...SETTING_TEXTS,
  ...READING_TEXTS,
  ...LENGTH_TEXTS,
};
