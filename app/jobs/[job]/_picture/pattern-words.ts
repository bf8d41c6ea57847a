import { millimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { PatternFinding, Untold, WhyNot } from '@/lib/assess/patterns';

/** What a named pattern says of the structure: `Sag: the center section is 5.1 mm low against both ends, …`. */
export function patternSentence({ pattern, section, side, size }: PatternFinding): string {
  const t = words('jobs');
  const by = { size: millimetres(Math.abs(size)) };
  switch (pattern) {
    case 'sag':
      return t(size < 0 ? 'patterns.named.sagLow' : 'patterns.named.sagHigh', by);
    case 'twist':
      return t(size > 0 ? 'patterns.named.twistLeft' : 'patterns.named.twistRight', by);
    case 'sway': {
      const end = section === 'rear' ? 'Rear' : 'Front';
      return t(size > 0 ? `patterns.named.sway${end}Right` : `patterns.named.sway${end}Left`, by);
    }
    case 'mash':
      return t(`patterns.named.mash.${section ?? 'center'}.${side ?? 'L'}`, by);
    case 'diamond':
      return t(side === 'L' ? 'patterns.named.diamondLeft' : 'patterns.named.diamondRight', by);
  }
}

/** A pattern with its place: `Mash, front section, left`. */
export function patternPlace({
  pattern,
  section,
  side,
}: Pick<PatternFinding, 'pattern' | 'section' | 'side'>): string {
  const t = words('jobs');
  return [
    t(`patterns.names.${pattern}`),
    ...(section === null ? [] : [t(`patterns.at.${section}`)]),
    ...(pattern === 'mash' && side !== null ? [t(`patterns.on.${side}`)] : []),
  ].join(', ');
}

export const whyNotSentence = (why: WhyNot): string => words('jobs')(`patterns.why.${why}`);

export const untoldSentence = ({ pattern, section, missing }: Untold): string =>
  `${patternPlace({ pattern, section, side: null })}: ${words('jobs')(`patterns.missing.${missing}`)}`;
