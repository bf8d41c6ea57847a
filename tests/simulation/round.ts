import type { Cause, GaugeKind, Observation, Round, Section, Setup, Side, Stage } from '@/lib/measure/types';

/** One setting and hanging of one gauge for heights, as deviations from the sheet, mm. A side left out was not read. */
export interface Hung {
  at: number;
  zero?: boolean;
  left?: number;
  right?: number;
  n?: [number, number];
  technician?: string;
  gauge?: string;
  gaugeKind?: GaugeKind;
  section?: Section;
  nominal?: [number, number];
  tolerance?: number;
  cause?: Cause;
  /** `centerline`: `left` is the sideways offset. */
  quantity?: 'height' | 'centerline';
  label?: string;
}

/** A length read in the round, as a deviation from the sheet, mm. */
export interface ReadLength {
  point: string;
  deviation: number;
  section?: Section;
  n?: number;
  nominal?: number;
  technician?: string;
}

export interface RoundParts {
  hung: readonly Hung[];
  lengths?: readonly ReadLength[];
  clearance?: number;
  stage?: Stage;
  attempt?: number;
}

const START = 1_700_000_000_000;
const MINUTE = 60_000;

/** The sheet's letters at a station: the first station from the front has A and B, the next C and D, … */
export function lettersAt(hung: readonly Pick<Hung, 'at'>[], at: number): [string, string] {
  const places = [...new Set(hung.map((one) => one.at))].sort((a, b) => a - b);
  const i = places.indexOf(at);
  return [String.fromCharCode(65 + 2 * i), String.fromCharCode(66 + 2 * i)];
}

/** A round of gauges hung one after the other, the lengths last; a reading repeats with an sd of half a millimetre. */
export function roundOf({
  hung,
  lengths = [],
  clearance = 0,
  stage = 'before',
  attempt = 1,
}: RoundParts): Round {
  const setups: Setup[] = hung.map((one, i) => ({
    label: one.label ?? `b1-${String(i + 1).padStart(2, '0')}`,
    technician: one.technician ?? 'T1',
    gauge: one.gauge ?? `G${1 + (i % 4)}`,
    gaugeKind: one.gaugeKind ?? 'centering',
    takenAt: START + i * MINUTE,
    observations: observations(hung, one, START + i * MINUTE),
  }));
  for (const [i, length] of lengths.entries()) {
    const takenAt = START + (hung.length + i) * MINUTE;
    setups.push({
      label: `m-${String(i + 1).padStart(2, '0')}`,
      technician: length.technician ?? 'T1',
      gauge: 'M1',
      gaugeKind: 'tram',
      takenAt,
      observations: [
        {
          quantity: 'length',
          point: length.point,
          side: null,
          section: length.section ?? null,
          station: null,
          zero: false,
          nominal: length.nominal ?? 1400,
          tolerance: 3,
          n: length.n ?? 1,
          deviation: length.deviation,
          ss: 0.25 * ((length.n ?? 1) - 1),
          cause: null,
          takenAt,
        },
      ],
    });
  }
  return { job: 'J1', sheet: 'S1', stage, attempt, clearance, setups };
}

function observations(hung: readonly Hung[], one: Hung, takenAt: number): Observation[] {
  const letters = lettersAt(hung, one.at);
  const sides: [Side, number | undefined][] = [
    ['L', one.left],
    ['R', one.right],
  ];
  return sides.flatMap(([side, deviation], s) => {
    if (deviation === undefined) return [];
    const quantity = one.quantity ?? 'height';
    return [
      {
        quantity,
        point: letters[s === 0 ? 0 : 1],
        side: quantity === 'height' ? side : null,
        section: one.section ?? null,
        station: one.at,
        zero: one.zero ?? false,
        nominal: quantity === 'height' ? (one.nominal?.[s] ?? 250) : 0,
        tolerance: one.tolerance ?? 3,
        n: one.n?.[s] ?? 1,
        deviation,
        ss: 0.25 * ((one.n?.[s] ?? 1) - 1),
        cause: one.cause ?? null,
        takenAt,
      },
    ];
  });
}
