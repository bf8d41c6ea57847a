import { knownColumns } from './columns';

export type Separator = ',' | ';' | '\t';

export const SEPARATOR_NAMES = { ',': 'comma', ';': 'semicolon', '\t': 'tab' } as const;

/** The separator under which the header names most of the columns; a comma where none does. */
export function separatorOf(headerLine: string): Separator {
  const candidates = ([',', ';', '\t'] as const).map((separator) => ({
    separator,
    known: knownColumns(headerLine.split(separator).map((field) => field.trim().replace(/^"|"$/g, ''))),
  }));
  candidates.sort((a, b) => b.known - a.known);
  return candidates[0]?.known ? candidates[0].separator : ',';
}
