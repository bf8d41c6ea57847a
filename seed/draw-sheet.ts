import type { Section, Side } from '@/lib/measure';
import type { Feature } from '@/lib/measure/sheet';
import { pointToPoint, stationAt } from './geometry';
import type { End, SheetLength, Station, VehicleSheet } from './sheet';

/** Letters as drawings use them: I and O are left out, for they look like figures. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** x, section, height left, height right, half width, where; `zero` and `strut` say what is special. */
export interface StationDraft {
  x: number;
  section: Section;
  left: number;
  /** As on the left where absent. */
  right?: number;
  half: number;
  where: string;
  /** What is measured to; a hole where absent, the strut tower where one is. */
  at?: Feature;
  zero?: boolean;
  strut?: boolean;
}

export interface SheetDraft {
  name: string;
  tolerance: number;
  /** Whether each side has a letter of its own or both share one. */
  letters: 'own' | 'shared';
  stations: readonly StationDraft[];
  /** `1L-2R`: from the left of station 1 to the right of station 2, stations counted from 0. */
  lengths: readonly string[];
  /** Lengths of a shared-letter sheet that do not say their side. */
  withoutSides?: readonly string[];
  tracking?: readonly (readonly [string, string])[];
  centerline?: boolean;
}

/** Makes a whole sheet of a draft: gives letters and computes the lengths from the coordinates, to the millimetre. */
export function drawSheet(draft: SheetDraft): VehicleSheet {
  const stations = draft.stations.map((station, index) => drawStation(draft.letters, station, index));
  const [a, b] = stations.flatMap((station, index) => (station.zero ? [index] : []));
  if (a === undefined || b === undefined) throw new Error(`${draft.name} has not got two zero stations.`);
  const length = (key: string) => drawLength(draft, stations, key);
  return {
    name: draft.name,
    tolerance: draft.tolerance,
    stations,
    zeros: [a, b],
    lengths: draft.lengths.map(length),
    tracking: (draft.tracking ?? []).map(([one, other]) => [length(one), length(other)]),
    centerline: draft.centerline ?? false,
  };
}

function drawStation(letters: SheetDraft['letters'], draft: StationDraft, index: number): Station {
  const letter = (i: number) => LETTERS.charAt(i);
  return {
    x: draft.x,
    section: draft.section,
    zero: draft.zero ?? false,
    hangs: draft.strut === true ? 'strut' : 'centering',
    letters:
      letters === 'own'
        ? { L: letter(2 * index), R: letter(2 * index + 1) }
        : { L: letter(index), R: letter(index) },
    height: { L: draft.left, R: draft.right ?? draft.left },
    halfWidth: draft.half,
    description: draft.where,
    feature: draft.strut === true ? 'strut tower' : (draft.at ?? 'hole'),
  };
}

function drawLength(draft: SheetDraft, stations: readonly Station[], key: string): SheetLength {
  const [from, to] = key.split('-').map(parseEnd);
  if (from === undefined || to === undefined) throw new Error(`${draft.name}: ${key} is not a length.`);
  const ends: [End, End] = [from, to];
  const withSide = draft.letters === 'shared' && !(draft.withoutSides ?? []).includes(key);
  const name = ({ station, side }: End) =>
    stationAt(stations, station).letters[side] + (withSide ? `.${side}` : '');
  return {
    point: ends.map(name).join('-'),
    ends,
    section: sectionOf(ends.map((end) => stationAt(stations, end.station).section)),
    nominal: Math.round(pointToPoint(stations, ends)),
  };
}

function parseEnd(text: string): End {
  const side: Side = text.endsWith('L') ? 'L' : 'R';
  return { station: Number.parseInt(text, 10), side };
}

/** A length that leaves the center section belongs to the section it reaches. */
function sectionOf(ends: readonly Section[]): Section {
  return ends.find((section) => section !== 'center') ?? 'center';
}
