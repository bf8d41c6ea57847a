import {
  newEntry,
  planOf,
  type BayHead,
  type BaySheet,
  type DimensionRef,
  type Entry,
  type EntryBody,
  type Place,
} from '@/lib/bay';
import type { SheetPoint } from '@/lib/measure/sheet/content';
import type { Dimension, GaugeKind, Section, Side } from '@/lib/measure/types';

const STATIONS: { letter: string; x: number; section: Section; zero: boolean; height: number }[] = [
  { letter: 'A', x: 0, section: 'front', zero: false, height: 214 },
  { letter: 'B', x: 1050, section: 'center', zero: true, height: 268 },
  { letter: 'C', x: 2470, section: 'center', zero: true, height: 231 },
  { letter: 'D', x: 3390, section: 'rear', zero: false, height: 317 },
];
const LENGTHS: [point: string, nominal: number, section: Section][] = [
  ['B.L-C.R', 1671, 'center'],
  ['B.R-C.L', 1671, 'center'],
  ['A.L-B.R', 1352, 'front'],
];
const SIDES: Side[] = ['L', 'R'];

const points: SheetPoint[] = STATIONS.flatMap(({ letter, x, section, zero }) =>
  SIDES.map((side) => ({
    ...{ letter, side, section, station: x, zero },
    ...{ description: 'Rail', feature: 'hole', halfWidth: null },
  })),
);

const heights: Dimension[] = STATIONS.flatMap(({ letter, x, section, zero, height }) =>
  SIDES.map((side) => ({
    ...{ quantity: 'height' as const, point: letter, side, section, station: x, zero },
    ...{ nominal: height, tolerance: 3 },
  })),
);

const lengths: Dimension[] = LENGTHS.map(([point, nominal, section]) => ({
  ...{ quantity: 'length' as const, point, side: null, section, station: null, zero: false },
  ...{ nominal, tolerance: 3 },
}));

/** An invented vehicle of four stations. */
export const SMALL_SHEET: BaySheet = {
  name: 'Small',
  revision: 1,
  points,
  dimensions: [...lengths, ...heights],
};

export const SMALL_HEAD: BayHead = {
  ...{ id: 7, job: 'J-1', sheet: SMALL_SHEET, stage: 'before', attempt: 1, clearance: 100, by: 'QUI' },
  ...{ startedAt: 0, finishedAt: null },
};

export const SMALL_PLAN = planOf(SMALL_SHEET);

export function placeAt(step: Place['step'], name: string): Place {
  const found = SMALL_PLAN.flatMap(({ places }) => places).find(
    (place) => place.step === step && place.name === name,
  );
  if (found === undefined) throw new RangeError(`The small sheet has no ${step} ${name}.`);
  return found;
}

const ref = ({ quantity, point, side, nominal }: Dimension): DimensionRef => ({
  ...{ quantity, point, side, nominal },
});

/** Entries of one device, a second apart. */
export class Device {
  readonly entries: Entry[] = [];

  constructor(readonly name = 'k7p') {}

  enter(body: EntryBody): Entry {
    const sequence = this.entries.length + 1;
    const key = `00000000-0000-4000-8000-${String(sequence).padStart(12, '0')}`;
    const entry = newEntry(this.name, sequence, sequence * 1000, key, body);
    this.entries.push(entry);
    return entry;
  }

  /** Hangs a gauge and reads deviations from what it was set to, in the order of the place, again and again. */
  hangAndRead(place: Place, gauge: string, kind: GaugeKind, deviations: readonly number[]): string {
    const setup = `b1-${this.entries.length + 1}${this.name}`;
    this.enter({ kind: 'hang', setup, place: place.key, gauge, gaugeKind: kind, hand: null });
    const asked = Array.from({ length: place.readings }, (_, at) =>
      place.dimensions.map((dimension) => ({ dimension, repeat: at + 1 })),
    ).flat();
    deviations.forEach((deviation, at) => {
      const one = asked[at];
      if (one === undefined) return;
      const { dimension, repeat } = one;
      const value =
        dimension.nominal + (dimension.quantity === 'height' ? SMALL_HEAD.clearance : 0) + deviation;
      this.enter({ kind: 'read', setup, dimension: ref(dimension), repeat, value });
    });
    return setup;
  }
}
