import { LastUsed } from '@/lib/memory';

/** Parsing less than this costs no more than looking it up. */
const LEAST = 1000;
/** So many letters of JSON are held in all; in use they take some five times as many bytes. */
const MOST = 12_000_000;

const known = new LastUsed<unknown>(MOST, (_, text) => text.length);

/**
 * What a JSON text says, frozen where the text is long. Pages read the same few long documents (answers, verdicts,
 * figures) again and again, and parsing them was most of what reading them took. The text itself is what a document
 * is known by, so what is given is what the database holds, whichever shop, database or process it came from. Those
 * that were asked for longest ago are let go.
 */
export function parsedOnce(text: string): unknown {
  if (text.length < LEAST) return JSON.parse(text);
  const there = known.get(text);
  if (there !== undefined) return there;
  const made: unknown = frozen(JSON.parse(text));
  known.set(text, made);
  return made;
}

/** Parsing first and freezing then takes a fraction of freezing while it is parsed. */
function frozen(data: unknown): unknown {
  if (typeof data !== 'object' || data === null) return data;
  for (const value of Object.values(data)) frozen(value);
  return Object.freeze(data);
}
