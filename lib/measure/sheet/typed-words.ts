import type { Section } from '@/lib/measure/types';
import { FEATURES } from './features';
import type { LengthKind, RowSide } from './rows';

/** Words as people and spreadsheets write them, in either language; the first of each list is ours. */
const SIDES: Record<RowSide, readonly string[]> = {
  both: ['both', 'b', 'l/r', 'l+r', 'lr', 'left and right', 'beide', 'beidseitig', 'links und rechts'],
  L: ['l', 'left', 'links', 'li'],
  R: ['r', 'right', 'rechts', 're'],
  center: ['center', 'centre', 'c', 'centerline', 'mitte', 'mittellinie', 'm'],
};
const SECTIONS: Record<Section, readonly string[]> = {
  front: ['front', 'f', 'vorn', 'vorne', 'bug', 'v'],
  center: ['center', 'centre', 'c', 'middle', 'mitte', 'm'],
  rear: ['rear', 'r', 'back', 'hinten', 'heck', 'h'],
};
const KINDS: Record<LengthKind, readonly string[]> = {
  straight: ['straight', 's', 'gerade', 'g', 'längs'],
  diagonal: ['diagonal', 'd', 'x', 'diagonale'],
};
const YES = ['yes', 'y', 'x', '1', 'true', 'zero', 'ja', 'j', 'null'];
const NO = ['no', 'n', '0', 'false', '-', 'nein'];
/** German words of features; English ones are known by themselves. */
const FEATURE_WORDS: Readonly<Record<string, string>> = {
  bohrung: 'hole',
  loch: 'hole',
  langloch: 'slot',
  schraubenkopf: 'bolt head',
  mutter: 'nut',
  bolzen: 'stud',
  stehbolzen: 'stud',
  schweißmutter: 'weld nut',
  stift: 'pin',
  buchse: 'bushing',
  niet: 'rivet',
  flansch: 'flange',
  kante: 'edge',
  ecke: 'corner',
  federbeindom: 'strut tower',
};

const among =
  <Word extends string>(words: Record<Word, readonly string[]>) =>
  (text: string): Word | undefined => {
    const plain = text.trim().toLowerCase();
    return (Object.keys(words) as Word[]).find((word) => words[word].includes(plain));
  };

export const sideFrom = among(SIDES);
export const sectionFrom = among(SECTIONS);
export const kindFrom = among(KINDS);

export function yesFrom(text: string): boolean | undefined {
  const plain = text.trim().toLowerCase();
  if (YES.includes(plain)) return true;
  return NO.includes(plain) ? false : undefined;
}

/** A feature by the trade's word where it is one, else as it stands. */
export function featureFrom(text: string | null): string | null {
  if (text === null) return null;
  const plain = text.toLowerCase();
  return FEATURES.find((feature) => feature === plain) ?? FEATURE_WORDS[plain] ?? text;
}
