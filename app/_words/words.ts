import { createTranslator } from 'use-intl/core';
import { catalogue, type Catalogue, type Part } from './catalogue';
import { localeOf, speech, type Speech } from './speech';

const make = <P extends Part>({ language }: Speech, part: P) =>
  createTranslator<Catalogue, P>({
    locale: localeOf({ language }),
    messages: catalogue[language],
    namespace: part,
  });

const made = new Map<string, unknown>();

/**
 * The words of one part of the house in the reader's language: `const t = words('look'); t('skip')`. Plurals and
 * gaps are ICU messages; `t.rich` fills in elements. Components of the browser use `useTranslations(part)`.
 */
export function words<P extends Part>(part: P, to: Speech = speech()): ReturnType<typeof make<P>> {
  const key = `${to.language} ${part}`;
  const known = made.get(key) as ReturnType<typeof make<P>> | undefined;
  const translator = known ?? make(to, part);
  if (known === undefined) made.set(key, translator);
  return translator;
}
