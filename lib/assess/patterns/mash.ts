import type { Section, Side } from '@/lib/measure/types';
import type { Change } from './changes';
import { decide } from './decide';
import { asOne, lengthParts } from './length-parts';
import type { PatternFinding, Untold } from './types';

const pattern = 'mash';

/** A length along one side of the vehicle: a rail, or a part of it. */
export const alongSide = ({ ends }: Change, side: Side): boolean =>
  ends !== null && ends.every((end) => end.side === side) && ends[0].station !== ends[1].station;

/**
 * Mash: the lengths along one side of a section shortened. The contrast is their mean change, mm. Where lengths of
 * other sections were read with the same gauge, these have to be shorter than their mean by the threshold too:
 * a tram that reads everything short mashes no rail.
 */
export function mash(changes: readonly Change[], section: Section, side: Side): PatternFinding | Untold {
  const rails = changes.filter((change) => change.section === section && alongSide(change, side));
  if (rails.length === 0) return { pattern, section, missing: 'side-lengths' };
  const gauges = new Set(rails.map(({ gauge }) => gauge));
  const others = changes.filter((change) => change.section !== section && gauges.has(change.gauge));
  const mean = rails.map(() => 1 / rails.length);
  const threshold = Math.max(...rails.map(({ tolerance }) => tolerance));
  const compared = others.length > 0;
  return decide({
    pattern,
    section,
    side,
    threshold,
    sign: -1,
    asRead: rails.reduce((sum, { asRead }) => sum + asRead / rails.length, 0),
    parts: (n) =>
      lengthParts(
        [...rails, ...(compared ? [together(others)] : [])],
        [mean, ...(compared ? [[...mean, -1]] : [])].slice(0, n),
      ),
    conditions: compared ? [{ limit: threshold, otherwise: 'same-gauge' }] : [],
  });
}

/** The mean of several lengths as one, taken as normal. */
function together(changes: readonly Change[]): Change {
  const [first] = changes;
  if (first === undefined) throw new RangeError('There is no mean of no lengths.');
  const all = changes.map(({ components }) => asOne(components));
  const n = all.length;
  return {
    ...first,
    components: [
      {
        weight: 1,
        mean: all.reduce((sum, { mean }) => sum + mean / n, 0),
        variance: all.reduce((sum, { variance }) => sum + variance / n ** 2, 0),
      },
    ],
  };
}
