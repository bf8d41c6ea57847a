import { decimal, grouped } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { Figure, Measure } from '@/lib/assess/what-if';

/** What is counted per 100 jobs. Of all of them less is better. */
export const measureName = (measure: Measure): string => words('whatIf')(`measures.${measure}`);

/** The same within a sentence: `needless re-dos`. */
export const measureInSentence = (measure: Measure): string =>
  words('whatIf')(`measuresInSentence.${measure}`);

export const measureMeaning = (measure: Measure): string => words('whatIf')(`meanings.${measure}`);

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
  const size = Number(Math.abs(value).toFixed(digits));
  const text = digits === 0 ? grouped(size) : decimal(size, digits);
  return value < 0 && size !== 0 ? `−${text}` : text;
}

export const withSign = (value: number, digits: number): string => {
  const text = plain(value, digits);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
};

type Change = 'better' | 'worse' | 'hardly any change' | 'no clear change';

/** Less of every measure is better; nothing is said where the interval holds zero. */
export function changeWord({ low, high }: Figure): Change {
  if (Math.max(Math.abs(low), Math.abs(high)) < HARDLY) return 'hardly any change';
  return high < 0 ? 'better' : low > 0 ? 'worse' : 'no clear change';
}

const CHANGE_KEYS = {
  better: 'better',
  worse: 'worse',
  'hardly any change': 'hardly',
  'no clear change': 'unclear',
} as const satisfies Record<Change, string>;

export const changeSaid = (change: Change): string => words('whatIf')(`words.${CHANGE_KEYS[change]}`);

/** Per 100 jobs; less than this shows as zero, however sure it is. */
const HARDLY = 0.005;
