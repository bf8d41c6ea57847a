import { createTranslator } from 'use-intl/core';
import { catalogue, type Catalogue, type Part } from './catalogue';
import { filled, gapsOf } from './gaps';
import { localeOf, speech, type Speech } from './speech';

const make = <P extends Part>({ language }: Speech, part: P) =>
  createTranslator<Catalogue, P>({
    locale: localeOf({ language }),
    messages: catalogue[language],
    namespace: part,
  });

type Words<P extends Part> = ReturnType<typeof make<P>>;
/** The same, as far as keys of any part go. */
type AnyWords = ((key: string, values?: Readonly<Record<string, unknown>>) => string) & {
  raw: (key: string) => unknown;
};

const made = new Map<string, unknown>();

/**
 * The words of one part of the house in the reader's language: `const t = words('look'); t('skip')`. Plurals and
 * gaps are ICU messages; `t.rich` fills in elements. Components of the browser use `useTranslations(part)`.
 */
export function words<P extends Part>(part: P, to: Speech = speech()): Words<P> {
  const key = `${to.language} ${part}`;
  const known = made.get(key) as Words<P> | undefined;
  const translator = known ?? (quick(make(to, part) as unknown as AnyWords) as unknown as Words<P>);
  if (known === undefined) made.set(key, translator);
  return translator;
}

/** The library looks a message up anew each time, which for a plain one takes longer than filling it: tables have hundreds. */
function quick(translator: AnyWords): AnyWords {
  const known = new Map<string, readonly string[] | null>();
  const plain = (key: string): readonly string[] | null => {
    const there = known.get(key);
    if (there !== undefined) return there;
    const message = translator.raw(key);
    const parts = typeof message === 'string' ? gapsOf(message) : null;
    known.set(key, parts);
    return parts;
  };
  const say: AnyWords = Object.assign(
    (key: string, values: Readonly<Record<string, unknown>> = {}) => {
      const parts = plain(key);
      return (parts === null ? null : filled(parts, values)) ?? translator(key, values);
    },
    { raw: translator.raw },
  );
  return Object.assign(say, translator);
}
