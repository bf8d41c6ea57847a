import type { Dimension, Side } from '@/lib/measure';
import type { Sheet } from '@/lib/store';
import type { SheetLength, Station, VehicleSheet } from './sheet';

const SIDES: readonly Side[] = ['L', 'R'];

export function heightDimension(sheet: VehicleSheet, station: Station, side: Side): Dimension {
  return {
    quantity: 'height',
    point: station.letters[side],
    side,
    section: station.section,
    station: station.x,
    zero: station.zero,
    nominal: station.height[side],
    tolerance: sheet.tolerance,
  };
}

/** The centre pin's offset; it goes by the letter of the left point. */
export function centerlineDimension(sheet: VehicleSheet, station: Station): Dimension {
  return {
    ...heightDimension(sheet, station, 'L'),
    quantity: 'centerline',
    side: null,
    nominal: 0,
  };
}

export function lengthDimension(sheet: VehicleSheet, length: SheetLength): Dimension {
  return {
    quantity: 'length',
    point: length.point,
    side: null,
    section: length.section,
    station: null,
    zero: false,
    nominal: length.nominal,
    tolerance: sheet.tolerance,
  };
}

/** The sheet as the store keeps it: every dimension that a round may read, and its points. */
export function storedSheet(sheet: VehicleSheet): Sheet {
  const lengths = [...sheet.lengths, ...sheet.tracking.flat()];
  return {
    name: sheet.name,
    dimensions: [
      ...lengths.map((length) => lengthDimension(sheet, length)),
      ...sheet.stations.flatMap((station) => SIDES.map((side) => heightDimension(sheet, station, side))),
      ...centerlineStations(sheet).map((station) => centerlineDimension(sheet, station)),
    ],
    points: sheet.stations.flatMap((station) =>
      SIDES.map((side) => ({
        letter: station.letters[side],
        side,
        description: station.description,
        feature: station.feature,
        section: station.section,
        station: station.x,
        zero: station.zero,
        halfWidth: station.halfWidth,
      })),
    ),
  };
}

/** Where centre pins are read: wherever a centering gauge hangs, but not at the zero stations they are sighted from. */
export function centerlineStations(sheet: VehicleSheet): Station[] {
  return sheet.centerline
    ? sheet.stations.filter((station) => !station.zero && station.hangs === 'centering')
    : [];
}
