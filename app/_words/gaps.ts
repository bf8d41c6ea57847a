/** A gap with nothing said of how it is filled: no plural, no choice, no format. */
const GAP = /\{\s*(\w+)\s*\}/;
/** What a message may hold that is more than text and such gaps: tags, quotes, numbers of a plural, other braces. */
const MORE = /[<>{}'#|]/;

/**
 * A message of text and plain gaps alone, taken apart: texts at even places, the names of gaps at odd ones. Null for
 * any other, which is the library's to fill.
 */
export function gapsOf(message: string): readonly string[] | null {
  const parts = message.split(new RegExp(GAP, 'g'));
  return parts.some((text, place) => place % 2 === 0 && MORE.test(text)) ? null : parts;
}

/** The message with its gaps filled as the library fills them; null where a value is missing or is no plain one. */
export function filled(parts: readonly string[], values: Readonly<Record<string, unknown>>): string | null {
  let text = parts[0] ?? '';
  for (let place = 1; place < parts.length; place += 2) {
    const value = values[parts[place] ?? ''];
    if (typeof value !== 'string' && typeof value !== 'number') return null;
    text += String(value) + (parts[place + 1] ?? '');
  }
  return text;
}
