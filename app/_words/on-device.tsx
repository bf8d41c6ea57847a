import type { ReactNode } from 'react';
import { catalogue, type Part } from './catalogue';
import { speech } from './speech';
import { OnDevice } from './speech/device';

/** Hands components of the browser the parts of the catalogue that they use, and no more. */
export function WordsOnDevice({ parts, children }: { parts: readonly Part[]; children: ReactNode }) {
  const heard = speech();
  const all = catalogue[heard.language];
  const messages = Object.fromEntries(parts.map((part) => [part, all[part]]));
  return (
    <OnDevice speech={heard} messages={messages}>
      {children}
    </OnDevice>
  );
}
