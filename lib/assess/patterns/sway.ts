import type { Section } from '@/lib/measure/types';
import {
  asReadBy,
  type Body,
  type BodyStation,
  type Contrast,
  entry,
  meanOfAll,
  partsOf,
  sumOf,
  thresholdOf,
} from './body';
import type { Change } from './changes';
import { decide } from './decide';
import { asOne, lengthParts } from './length-parts';
import { DIAGONALS, lengthsOf, quadOf, SIDES_ALIKE } from './quad';
import type { PatternFinding, Untold } from './types';

const pattern = 'sway';

/**
 * Sway: the centerline shifted sideways at the front or at the rear. The contrast is the mean of that section's centre
 * pins from the straight line through the pins of both zero stations, to the right positive. Where no pin was read the
 * diagonals of the section tell it: an end shifted by s makes them differ by 2 s w / d, with w the width and d the
 * diagonal, while its sides stay alike.
 * @param pins the body sideways, as a judged round with a left side alone; null where no pin was judged.
 */
export function sway(
  pins: Body | null,
  changes: readonly Change[],
  section: 'front' | 'rear',
): PatternFinding | Untold {
  const stations = pins?.stations.filter((station) => station.section === section && station.read[0]) ?? [];
  if (pins === null || stations.length === 0) return byDiagonals(changes, section);
  const whole = meanOfAll(stations.map((station) => aside(pins, station)));
  return decide({
    pattern,
    section,
    side: null,
    threshold: thresholdOf([...stations, ...pins.zeros]),
    asRead: asReadBy(pins, whole),
    parts: () => partsOf(pins, [whole]),
    conditions: [],
  });
}

function aside({ zeros: [a, b] }: Body, { x, at }: BodyStation): Contrast {
  const wb = (x - a.x) / (b.x - a.x);
  return sumOf([1, entry(at[0])], [wb - 1, entry(a.at[0])], [-wb, entry(b.at[0])]);
}

/**
 * At the front an end that went to the right lengthens P.R–Q.L, at the rear P.L–Q.R. A diamond of the whole structure
 * makes the diagonals of its ends differ too, by 2 h l / d for a side pushed back by h: half of the threshold has to be
 * left when what the center section shows of it is taken away.
 */
function byDiagonals(changes: readonly Change[], section: Section): PatternFinding | Untold {
  const quad = quadOf(changes, section);
  if (typeof quad === 'string') return { pattern, section, missing: 'pins' };
  const center = quadOf(changes, 'center');
  const { nominal: d } = quad.rightToLeft;
  const width = Math.sqrt(Math.max(1, d ** 2 - quad.along ** 2));
  const factor = ((section === 'front' ? 1 : -1) * d) / (2 * width);
  const scaled = (row: readonly number[]) => row.map((weight) => factor * weight);
  const lengths = lengthsOf(quad);
  const threshold = Math.max(...lengths.map(({ tolerance }) => tolerance));
  const known = typeof center === 'string' ? [] : [center.rightToLeft, center.leftToRight];
  const share =
    typeof center === 'string' ? 0 : (quad.along * center.rightToLeft.nominal) / (d * center.along);
  return decide({
    pattern,
    section,
    side: null,
    threshold,
    asRead: factor * (quad.rightToLeft.asRead - quad.leftToRight.asRead),
    parts: (n) =>
      lengthParts(
        [...lengths, ...known.map((one) => ({ ...one, components: [asOne(one.components)] }))],
        [DIAGONALS, ...SIDES_ALIKE, ...(known.length > 0 ? [[...DIAGONALS, -share, share]] : [])]
          .slice(0, n)
          .map(scaled),
      ),
    conditions: [
      ...SIDES_ALIKE.map(() => ({ limit: 0, otherwise: 'sides-differ' as const })),
      ...(known.length > 0 ? [{ limit: threshold / 2, otherwise: 'diamond' as const }] : []),
    ],
  });
}
