import type { Change } from './changes';
import { decide } from './decide';
import { lengthParts } from './length-parts';
import { DIAGONALS, lengthsOf, quadOf, SIDES_ALIKE } from './quad';
import type { PatternFinding, Untold } from './types';

const [pattern, section] = ['diamond', 'center'] as const;

/**
 * Diamond: one side pushed back against the other, so that the diagonals of the center section differ while the
 * lengths of its sides do not. With the front station P and the rear station Q the contrast is, in changes from the
 * sheet,
 *
 *     (P.R–Q.L) − (P.L–Q.R)
 *
 * positive where the left is pushed back. A left side pushed back by h makes it 2 h l / d, with l the distance of the
 * stations and d the diagonal; a left side shortened by h makes it h l / d, but the sides then differ by h. So the
 * sides have to differ by less than half of what the diagonals do. In the front and rear section the same lengths tell
 * sway (`sway.ts`): a section leaning to one side has the same shape.
 */
export function diamond(changes: readonly Change[]): PatternFinding | Untold {
  const quad = quadOf(changes, section);
  if (typeof quad === 'string') return { pattern, section, missing: quad };
  const lengths = lengthsOf(quad);
  const finding = decide({
    pattern,
    section,
    side: null,
    threshold: Math.max(...lengths.map(({ tolerance }) => tolerance)),
    asRead: quad.rightToLeft.asRead - quad.leftToRight.asRead,
    parts: (n) => lengthParts(lengths, [DIAGONALS, ...SIDES_ALIKE].slice(0, n)),
    conditions: SIDES_ALIKE.map(() => ({ limit: 0, otherwise: 'sides-differ' })),
  });
  return { ...finding, side: finding.size > 0 ? 'L' : 'R' };
}
