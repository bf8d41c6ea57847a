import { millimetresToInches } from '@/lib/measure/units';
import { monthName } from '@/app/_words/times';
import { speech, type Language, type Speech } from '@/app/_words/speech';
import de from './de.json';
import deRecords from './de-records.json';
import { PhraseBook } from './phrases';

const BOOKS: Record<Exclude<Language, 'en'>, PhraseBook> = {
  de: new PhraseBook({ ...deRecords, ...de }),
};

const LENGTH = /(\d+(?:\.(\d+))?)([ \u00a0])mm\b/g;
const inInches = (text: string): string =>
  text.replace(
    LENGTH,
    (_, number: string, decimals: string | undefined, space: string) =>
      `${millimetresToInches(Number(number)).toFixed((decimals?.length ?? 0) + 2)}${space}in`,
  );

/** Where one sentence ends and the next begins. */
const BETWEEN_SENTENCES = /(?<=[.;:]) (?=\S)/;

/** A month as the analysis names it, where its sentences name one. */
const MONTH = /(?<=\b(?:from|in|since|between|and) )20\d\d-(?:0[1-9]|1[0-2])(?![-\d])/g;

/**
 * Signs as they stand elsewhere on the pages: a true minus, no gap after a plus-minus, a number kept with its unit and with
 * what it is the value of.
 */
const finely = (text: string): string =>
  text
    .replaceAll(/(?<=^|[\s(])-(?=\d)/g, '−')
    .replaceAll(/± (?=\d)/g, '±')
    .replaceAll(/(?<=\d) (?=(?:mm|in|%)(?![\w-]))/g, '\u00a0')
    .replaceAll(/(?<=\p{L}) = (?=\d)/gu, '\u00a0=\u00a0');

/**
 * A sentence that the analysis made, in the reader's language and units. The analysis knows one language, since its
 * sentences are kept with its figures and go out by its interfaces; here they are looked up in a book of phrases. What
 * is not in the book stays as it is.
 */
export function told(text: string, to: Speech = speech()): string {
  const dated = text.replaceAll(MONTH, (month) => monthName(month, to));
  const measured = to.units === 'mm' ? dated : inInches(dated);
  return finely(to.language === 'en' ? measured : translated(measured, BOOKS[to.language]));
}

function translated(text: string, book: PhraseBook): string {
  const found = book.find(text, (gap) => translated(gap, book));
  if (found !== null) return found;
  const sentences = text.split(BETWEEN_SENTENCES);
  if (sentences.length > 1) return inRuns(sentences, book);
  return text.replace(/(?<![\d.\w])(\d+)\.(\d+)(?![\d.\w])/g, '$1,$2');
}

/** Several sentences, in runs as long as the book knows them: some phrases are two sentences. */
function inRuns(sentences: readonly string[], book: PhraseBook): string {
  const said: string[] = [];
  let from = 0;
  while (from < sentences.length) {
    const run = longestKnown(sentences.slice(from), book);
    said.push(run?.translation ?? translated(sentences[from] ?? '', book));
    from += run?.length ?? 1;
  }
  return said.join(' ');
}

function longestKnown(sentences: readonly string[], book: PhraseBook) {
  for (let length = sentences.length; length > 1; length--) {
    const text = sentences.slice(0, length).join(' ');
    const translation = book.find(text, (gap) => translated(gap, book));
    if (translation !== null) return { length, translation };
  }
  return null;
}
