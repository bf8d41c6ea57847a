import { lengthEnds } from '@/lib/measure/dimension';
import type { SheetPoint } from '@/lib/measure/sheet/content';
import { STRUT_TOWER } from '@/lib/measure/sheet/features';
import type { Dimension } from '@/lib/measure/types';
import { STEPS, type Step } from './entry';
import type { BaySheet } from './types';

/** What one hanging of a gauge (or one setting of a tram gauge) reads. */
export interface Place {
  /** Known by this within the round: `zero-gauges 1200 C`, `lengths K-N 1452`. */
  key: string;
  step: Step;
  /** The sheet's letter or letters, `C`; of a length both ends. */
  name: string;
  /** In the order they are read: left before right. */
  dimensions: Dimension[];
  points: SheetPoint[];
  /** How often each is read with the gauge untouched. */
  readings: number;
}

export interface PlannedStep {
  step: Step;
  places: Place[];
}

/** Zero gauges carry the datum and are read twice. Source: common practice. */
const READINGS: Record<Step, number> = {
  equipment: 0,
  'center-lengths': 1,
  'zero-gauges': 2,
  heights: 1,
  struts: 1,
  centerline: 1,
  lengths: 1,
};

/** The sheet as a round in the order of the trade; a step without anything to read has no places. */
export function planOf(sheet: BaySheet): PlannedStep[] {
  const places = [...lengthPlaces(sheet), ...stationPlaces(sheet)];
  return STEPS.map((step) => ({ step, places: places.filter((place) => place.step === step) }));
}

function lengthPlaces(sheet: BaySheet): Place[] {
  return sheet.dimensions
    .filter(({ quantity }) => quantity === 'length')
    .map((dimension) => {
      const step: Step = liesInCenter(dimension, sheet) ? 'center-lengths' : 'lengths';
      const ends = lengthEnds(dimension.point) ?? [];
      return {
        key: `${step} ${dimension.point} ${dimension.nominal}`,
        step,
        name: dimension.point,
        dimensions: [dimension],
        points: ends.flatMap((end) =>
          sheet.points.filter(
            ({ letter, side }) => letter === end.point && (end.side === null || side === end.side),
          ),
        ),
        readings: READINGS[step],
      };
    });
}

/** The center section's lengths tell whether the datum can be trusted: said by the sheet, or by both ends. */
function liesInCenter(dimension: Dimension, sheet: BaySheet): boolean {
  if (dimension.section !== null) return dimension.section === 'center';
  const ends = lengthEnds(dimension.point);
  if (ends === null) return false;
  return ends.every(({ point }) =>
    sheet.points.some(({ letter, section }) => letter === point && section === 'center'),
  );
}

/** One place for each station and step, since one gauge hangs on both sides. */
function stationPlaces(sheet: BaySheet): Place[] {
  const places = new Map<string, Place>();
  for (const dimension of sheet.dimensions) {
    if (dimension.quantity === 'length') continue;
    const step = stepOf(dimension, sheet);
    // Letters may differ from side to side; the station is what a gauge hangs at.
    const at = `${step} ${dimension.station ?? ''}`;
    const place = places.get(at) ?? {
      key: '',
      step,
      name: '',
      dimensions: [],
      points: [],
      readings: READINGS[step],
    };
    place.dimensions.push(dimension);
    places.set(at, place);
  }
  const found = [...places.values()].map((place) => named(place, sheet));
  const datum = found.filter(({ step }) => step === 'zero-gauges').map(stationOf);
  // Nearest to the datum first: what is read there settles most.
  const away = (place: Place) => Math.min(...datum.map((x) => Math.abs(stationOf(place) - x)), Infinity);
  return found.sort((a, b) => away(a) - away(b) || stationOf(a) - stationOf(b));
}

const stationOf = (place: Place): number => place.dimensions[0]?.station ?? 0;

function named(place: Place, sheet: BaySheet): Place {
  const dimensions = place.dimensions.sort(
    (a, b) => (a.side ?? '').localeCompare(b.side ?? '') || a.point.localeCompare(b.point),
  );
  const name = [...new Set(dimensions.map(({ point }) => point))].join(' ');
  const points = sheet.points.filter(({ letter, side }) =>
    dimensions.some(
      (one) => one.point === letter && (one.side === null || side === null || one.side === side),
    ),
  );
  return { ...place, key: `${place.step} ${stationOf(place)} ${name}`, name, dimensions, points };
}

function stepOf(dimension: Dimension, sheet: BaySheet): Step {
  if (dimension.quantity === 'centerline') return 'centerline';
  if (dimension.zero) return 'zero-gauges';
  const tower = sheet.points.some(
    ({ letter, side, feature }) =>
      letter === dimension.point && (side === null || side === dimension.side) && feature === STRUT_TOWER,
  );
  return tower ? 'struts' : 'heights';
}
