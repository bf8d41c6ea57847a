import { describe, expect, it } from 'vitest';
import { createTranslator } from 'use-intl/core';
import { catalogue } from '@/app/_words/catalogue';
import { filled, gapsOf } from '@/app/_words/gaps';

interface Nested {
  [key: string]: string | Nested;
}

const messagesOf = (of: Nested): string[] =>
  Object.values(of).flatMap((one) => (typeof one === 'string' ? [one] : messagesOf(one)));

const byLibrary = (message: string, values: Record<string, string | number>): string =>
  (
    createTranslator({ locale: 'de-DE', messages: { message } }) as (key: string, of: typeof values) => string
  )('message', values);

describe('a plain message', () => {
  const plain = Object.values(catalogue)
    .flatMap((words) => messagesOf(words as unknown as Nested))
    .flatMap((message) => {
      const parts = gapsOf(message);
      return parts === null || parts.length === 1 ? [] : [{ message, parts }];
    });

  it('is filled as the library fills it, every one of the catalogue', () => {
    expect(plain.length).toBeGreaterThan(200);
    for (const { message, parts } of plain) {
      const names = parts.filter((_, place) => place % 2 === 1);
      const values = Object.fromEntries(
        names.map((name, i) => [name, i % 2 === 0 ? 1234.5 - i : `„${name}“ <b>`]),
      );
      expect(filled(parts, values), message).toBe(byLibrary(message, values));
    }
  });

  it('is none where it holds a plural, a choice, a format, a tag or a quote, and is not filled without its values', () => {
    const others = ['{n, plural, one {#} other {# of}}', '{n, number}', '<b>{n}</b>', "it''s {n}", '{n} {'];
    expect(others.map(gapsOf)).toEqual(others.map(() => null));
    expect(filled(['', 'n', ' mm'], {})).toBeNull();
    expect(filled(['', 'n', ' mm'], { n: 0 })).toBe('0 mm');
  });
});
