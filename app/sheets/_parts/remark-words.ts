import { millimetres } from '@/app/_words/numbers';
import type { Speech } from '@/app/_words/speech';
import type { Remark, RemarkValue } from '@/lib/measure/sheet';
import type { Say } from './say';

/** Values that are words of the domain, and under which part of the catalogue they stand. */
const WORDS: Readonly<Record<string, string>> = {
  side: 'side',
  kind: 'kind',
  other: 'kind',
  section: 'section',
  otherSection: 'section',
};

/** A remark as the sentence that names the thing and its mend, in the reader's language and units. */
export function remarkSentence(remark: Pick<Remark, 'code' | 'values'>, say: Say, speech: Speech): string {
  const values = Object.entries(remark.values).map(([name, value]) => [
    name,
    shown(remark.code, name, value, say, speech),
  ]);
  return say(`checks.${remark.code}`, Object.fromEntries(values) as Record<string, string | number>);
}

function shown(
  code: Remark['code'],
  name: string,
  value: RemarkValue,
  say: Say,
  speech: Speech,
): string | number {
  if (typeof value !== 'string') return 'mm' in value ? millimetres(value.mm, 1, speech) : value.count;
  const part = WORDS[name];
  // `other` is a letter where points are held against each other.
  if (part === undefined || value === '' || (name === 'other' && code !== 'length-other-kind')) return value;
  return say(`${part}.${value}`);
}

/** By this a remark is known again while its sheet is being typed, wherever its row stands. */
export const remarkKey = ({ code, values }: Pick<Remark, 'code' | 'values'>): string =>
  `${code} ${JSON.stringify(values)}`;
