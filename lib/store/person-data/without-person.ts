import type { Json } from '@/lib/store/types';

/** Who is to be no longer named, and what stands in place of both names. */
export interface Renaming {
  code: string;
  name: string;
  pseudonym: string;
}

/** A single sign is a point of a sheet as likely as a code: in sentences it is left alone. */
const SHORTEST = 2;

/** What of both names can be looked for within a sentence. */
export const lookedFor = ({ code, name }: Renaming): string[] =>
  [name, code].filter((word) => word.length >= SHORTEST);

/** A sentence with the pseudonym where code or name stood as words of their own. */
export function textWithout(text: string, renaming: Renaming): string {
  return lookedFor(renaming).reduce((left, word) => {
    const alone = new RegExp(`(?<![\\p{L}\\p{N}])${escaped(word)}(?![\\p{L}\\p{N}])`, 'gu');
    return left.replace(alone, renaming.pseudonym);
  }, text);
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/-]/g, '\\$&');

/** Names of values that are names of other things, whatever they are alike to; `points` is a list of such. */
const OF_OTHER_THINGS = new Set([
  'job',
  'gauge',
  'setup',
  'sheet',
  'point',
  'side',
  'section',
  'stage',
  'quantity',
]);

/** A document with the pseudonym in place of code and name: as values, as names of values, and within sentences. */
export function jsonWithout(json: Json, renaming: Renaming): Json {
  const { code, name, pseudonym } = renaming;
  if (typeof json === 'string')
    return json === code || json === name ? pseudonym : textWithout(json, renaming);
  if (Array.isArray(json)) return json.map((one) => jsonWithout(one, renaming));
  if (json === null || typeof json !== 'object') return json;
  return Object.fromEntries(
    Object.entries(json).map(([key, value]) => [
      key === code ? pseudonym : key,
      key === 'points' || (OF_OTHER_THINGS.has(key) && typeof value === 'string')
        ? value
        : jsonWithout(value, renaming),
    ]),
  );
}
