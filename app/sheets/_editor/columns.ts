import { unit } from '@/app/_words/numbers';
import type { Speech } from '@/app/_words/speech';
import type { Say } from '@/app/sheets/_parts/say';
import { FEATURES, LENGTH_KINDS, ROW_SIDES, type LengthColumn, type PointColumn } from '@/lib/measure/sheet';
import { SECTIONS } from '@/lib/measure/types';
import type { GridColumn } from './grid';

const choices = (part: string, words: readonly string[], say: Say) =>
  words.map((word) => [word, say(`${part}.${word}`)] as const);
const NONE = [['', '–']] as const;

/** What is asked of a point, in the order of typing. */
export const pointColumns = (say: Say, speech: Speech): GridColumn<PointColumn>[] => {
  const head = (column: string) => say(`columns.${column}`, { unit: unit(speech) });
  return [
    { column: 'letter', head: head('letter') },
    { column: 'side', head: head('side'), choices: choices('side', ROW_SIDES, say) },
    { column: 'description', head: head('description') },
    { column: 'feature', head: head('feature'), choices: [...NONE, ...choices('features', FEATURES, say)] },
    { column: 'section', head: head('section'), choices: [...NONE, ...choices('section', SECTIONS, say)] },
    { column: 'station', head: head('station'), numeric: true },
    { column: 'height', head: head('height'), numeric: true },
    { column: 'halfWidth', head: head('halfWidth'), numeric: true },
    { column: 'zero', head: head('zero'), tick: true },
    { column: 'tolerance', head: head('tolerance'), numeric: true },
    { column: 'centerline', head: head('centerline'), numeric: true },
  ];
};

export const lengthColumns = (say: Say, speech: Speech): GridColumn<LengthColumn>[] => {
  const head = (column: string) => say(`columns.${column}`, { unit: unit(speech) });
  return [
    { column: 'from', head: head('from') },
    { column: 'to', head: head('to') },
    { column: 'kind', head: head('kind'), choices: [...NONE, ...choices('kind', LENGTH_KINDS, say)] },
    { column: 'nominal', head: head('nominal'), numeric: true },
    { column: 'tolerance', head: head('tolerance'), numeric: true },
  ];
};
