import { FALSE_ALARM_RATE, type HabitCell } from '@/lib/assess/habits';
import { brief, percent } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';

/** How false findings are held down, in one sentence. */
export function falseAlarmWords(cells: readonly HabitCell[]): string {
  const tested = cells.filter(({ p }) => p !== null).length;
  const t = words('habits');
  const held = { share: percent(FALSE_ALARM_RATE), rate: brief(FALSE_ALARM_RATE, 4) };
  return tested === 0 ? t('falseAlarms', held) : t('falseAlarmsTested', { ...held, tests: String(tested) });
}
