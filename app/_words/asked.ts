import type { z } from 'zod';
import { firstOf, type Query } from './address';

/**
 * Reads an address part by part: one that is absent or cannot be understood is left out, and of the latter a sentence
 * says so. A mistyped address shows more than was meant, never an error.
 * @param notUnderstood that sentence, with the text as far as it is repeated.
 */
export function asked<Part extends string>(
  query: Query,
  notUnderstood: (text: string, part: Part) => string,
): { read: <T>(part: Part, schema: z.ZodType<T>) => T | undefined; notes: string[] } {
  const notes: string[] = [];
  const read = <T>(part: Part, schema: z.ZodType<T>): T | undefined => {
    const text = firstOf(query, part);
    if (text === undefined) return undefined;
    const parsed = schema.safeParse(text);
    if (parsed.success) return parsed.data;
    notes.push(notUnderstood(text.slice(0, MOST_REPEATED), part));
    return undefined;
  };
  return { read, notes };
}

const MOST_REPEATED = 40;
