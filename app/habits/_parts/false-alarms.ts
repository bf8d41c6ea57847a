import { FALSE_ALARM_RATE, type HabitCell } from '@/lib/assess/habits';
import { percent } from '@/app/_words/numbers';

/** How false findings are held down, in one sentence. */
export function falseAlarmWords(cells: readonly HabitCell[]): string {
  const tested = cells.filter(({ p }) => p !== null).length;
  const whose = tested === 0 ? '' : ` (${tested} tests here)`;
  return `Of all that is called found, at most ${percent(FALSE_ALARM_RATE)} are expected to be false alarms, counted over all technicians and habits together${whose}: each p is adjusted for that (Benjamini–Hochberg), and “found” means an adjusted p of ${FALSE_ALARM_RATE} or less.`;
}
