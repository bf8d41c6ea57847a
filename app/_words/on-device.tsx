import type { ReactNode } from 'react';
import { catalogue, type Part } from './catalogue';
import { speech, type Language } from './speech';
import { OnDevice } from './speech/device';

/** A part of the catalogue, or what stands there under one key. */
type Words = Part | `${Part}.${string}`;

/** Hands components of the browser the parts of the catalogue that they use, and no more. */
export function WordsOnDevice({ parts, children }: { parts: readonly Words[]; children: ReactNode }) {
  const heard = speech();
  return (
    <OnDevice speech={heard} messages={messagesOf(heard.language, parts)}>
      {children}
    </OnDevice>
  );
}

const written = new Map<string, string>();

/** As text: React would take hundreds of words through its payload one by one, on the server and in the browser. */
function messagesOf(language: Language, parts: readonly Words[]): string {
  const name = `${language} ${parts.join(' ')}`;
  const text =
    written.get(name) ?? JSON.stringify(Object.fromEntries(parts.map((one) => wordsOf(language, one))));
  written.set(name, text);
  return text;
}

function wordsOf(language: Language, words: Words): [part: string, messages: unknown] {
  const [part = '', key] = words.split('.');
  const all: unknown = catalogue[language][part as Part];
  return [part, key === undefined ? all : { [key]: (all as Readonly<Record<string, unknown>>)[key] }];
}
