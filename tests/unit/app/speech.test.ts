import { describe, expect, it } from 'vitest';
import { catalogue } from '@/app/_words/catalogue';
import { millimetres, signed } from '@/app/_words/numbers';
import { speechFrom, type Speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';

const inches: Speech = { language: 'en', units: 'in' };
const german: Speech = { language: 'de', units: 'mm' };

/** `look.footer.caution` → its text, for every word of a language. */
function flat(value: unknown, at = ''): [string, string][] {
  if (typeof value === 'string') return [[at, value]];
  return Object.entries(value as Record<string, unknown>).flatMap(([key, inner]) =>
    flat(inner, `${at}.${key}`),
  );
}

/** The gaps and the elements of an ICU message, by name; the words of its plurals and choices are none. */
function gaps(text: string): string[] {
  const found = new Set([...text.matchAll(/<(\w+)>/g)].map(([, name]) => name ?? ''));
  /** Braces open a gap within words, and words within a gap. */
  let inWords = true;
  for (const [brace, name] of text.matchAll(/\{\s*(\w*)|\}/g)) {
    if (brace !== '}' && inWords) found.add(name ?? '');
    inWords = !inWords;
  }
  return [...found].sort();
}

describe('a reader', () => {
  it('reads lengths in the chosen unit and the language’s digits', () => {
    expect(millimetres(307.5)).toBe('307.5\u00a0mm');
    // 25.4 mm to the inch, exact by the international agreement of 1959.
    expect(millimetres(25.4, 1, inches)).toBe('1.000\u00a0in');
    expect(signed(-2.54, 1, inches)).toBe('−0.100');
    expect(millimetres(307.5, 1, german)).toBe('307,5\u00a0mm');
  });

  it('gets English and millimetres where the cookies say nothing known', () => {
    expect(speechFrom('xx', undefined)).toEqual({ language: 'en', units: 'mm' });
    expect(speechFrom('de', 'in')).toEqual({ language: 'de', units: 'in' });
  });

  it('is told the words of the chosen language', () => {
    expect(words('look', german)('signOut')).toBe('Abmelden');
  });
});

describe('the catalogue', () => {
  const english = new Map(flat(catalogue.en));
  it.each(['de'] as const)('says everything in %s, with the same gaps', (language) => {
    const other = new Map(flat(catalogue[language]));
    expect([...other.keys()].sort()).toEqual([...english.keys()].sort());
    for (const [key, text] of english) expect([key, gaps(other.get(key) ?? '')]).toEqual([key, gaps(text)]);
  });
});
