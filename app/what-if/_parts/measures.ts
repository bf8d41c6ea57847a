import { grouped } from '@/app/_words/numbers';
import type { Figure, Measure } from '@/lib/assess/what-if';

/** What is counted per 100 jobs. Of all of them less is better. */
export const MEASURE_NAMES: Record<Measure, string> = {
  falseAlarms: 'False alarms',
  missed: 'Missed damage',
  redos: 'Re-dos',
  needlessRedos: 'Needless re-dos',
  missedJobs: 'Jobs wrongly called right',
  minutes: 'Hours of work',
};

export const MEASURE_MEANINGS: Record<Measure, string> = {
  falseAlarms: 'dimensions called out that are truly within',
  missed: 'dimensions called within that are truly out',
  redos: 'jobs called not right and worked on again',
  needlessRedos: 'those of them that were right',
  missedJobs: 'jobs called right in which something is truly out',
  minutes: 'measuring, hanging again and re-dos together',
};

/** Work is told in hours: minutes of 100 jobs are numbers that nobody can picture. */
const scaleOf = (measure: Measure): number => (measure === 'minutes' ? 60 : 1);

export function shown(measure: Measure, { value, low, high }: Figure): Figure {
  const scale = scaleOf(measure);
  return { value: value / scale, low: low / scale, high: high / scale };
}

/** As many digits as the interval supports. */
export function digitsFor(measure: Measure, { low, high }: Figure): number {
  const width = high - low;
  return measure !== 'minutes' && width < 0.2 ? 2 : width < 20 ? 1 : 0;
}

export function plain(value: number, digits: number): string {
  const text = digits === 0 ? grouped(Math.round(Math.abs(value))) : Math.abs(value).toFixed(digits);
  return value < 0 && Number(text.replaceAll(',', '')) !== 0 ? `−${text}` : text;
}

export const withSign = (value: number, digits: number): string => {
  const text = plain(value, digits);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
};

/** Less of every measure is better; nothing is said where the interval holds zero. */
export function changeWord({
  low,
  high,
}: Figure): 'better' | 'worse' | 'hardly any change' | 'no clear change' {
  if (Math.max(Math.abs(low), Math.abs(high)) < HARDLY) return 'hardly any change';
  return high < 0 ? 'better' : low > 0 ? 'worse' : 'no clear change';
}

/** Per 100 jobs; less than this shows as zero, however sure it is. */
const HARDLY = 0.005;
