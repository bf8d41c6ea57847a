'use client';

import { createContext, useContext, type ReactNode } from 'react';
import { IntlProvider } from 'use-intl/react';
import type { Catalogue } from '@/app/_words/catalogue';
import { localeOf, PLAIN, type Speech } from './speech';

const Spoken = createContext<Speech>(PLAIN);

/** How the reader is spoken to, for components of the browser: `millimetres(value, 1, useSpeech())`. */
export const useSpeech = (): Speech => useContext(Spoken);

/** Gives components of the browser the reader's language and units, and the part of the catalogue that they use. */
export function OnDevice({
  speech,
  messages,
  children,
}: {
  speech: Speech;
  /** JSON of a part of the catalogue. */
  messages: string;
  children: ReactNode;
}) {
  return (
    <Spoken.Provider value={speech}>
      <IntlProvider locale={localeOf(speech)} messages={read(messages)} timeZone="UTC">
        {children}
      </IntlProvider>
    </Spoken.Provider>
  );
}

/** Read once for each text: the same messages are the same object to whoever draws with them. */
const known = new Map<string, Partial<Catalogue>>();

function read(text: string): Partial<Catalogue> {
  const messages = known.get(text) ?? (JSON.parse(text) as Partial<Catalogue>);
  known.set(text, messages);
  return messages;
}
