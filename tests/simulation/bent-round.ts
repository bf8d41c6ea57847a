import type { Observation, Round, Section, Setup, Side, Stage } from '@/lib/measure/types';
import { Random } from './random';

/** How far a point is from where the sheet has it, mm: up, to the rear, to the right. */
export interface Moved {
  up?: number;
  along?: number;
  across?: number;
}

export interface BentOptions {
  seed: number;
  stage?: Stage;
  /** Where a point is moved to, by its place along the vehicle, mm from the front, and its side. */
  bent?: (x: number, side: Side) => Moved;
  /** Probability that a gauge is set wrong, on top of ordinary scatter. */
  missetRate?: number;
  /** Stations set wrong for sure, on both sides, mm. */
  misset?: ReadonlyMap<number, number>;
  /** What the tram reads too long or too short, mm. */
  tramError?: number;
  /** Every gauge away from the zero stations is hung a second time, set anew. */
  hungTwice?: boolean;
  pins?: boolean;
  scatter?: number;
  setting?: number;
}

/** An invented vehicle: stations with their section and half width, the zero stations at 1100 and 2600. */
export const STATIONS: readonly { x: number; section: Section; half: number; zero: boolean }[] = [
  { x: 0, section: 'front', half: 440, zero: false },
  { x: 550, section: 'front', half: 430, zero: false },
  { x: 1100, section: 'center', half: 410, zero: true },
  { x: 2600, section: 'center', half: 470, zero: true },
  { x: 3300, section: 'rear', half: 490, zero: false },
  { x: 4000, section: 'rear', half: 520, zero: false },
];
const TOLERANCE = 3;
const SIDES: readonly Side[] = ['L', 'R'];
const LENGTHS: readonly [number, Side, number, Side][] = [
  [2, 'L', 3, 'L'],
  [2, 'R', 3, 'R'],
  [2, 'L', 3, 'R'],
  [2, 'R', 3, 'L'],
  [0, 'L', 2, 'L'],
  [0, 'R', 2, 'R'],
  [0, 'L', 2, 'R'],
  [0, 'R', 2, 'L'],
  [3, 'L', 5, 'L'],
  [3, 'R', 5, 'R'],
];

const letter = (index: number, side: Side): string =>
  String.fromCharCode(65 + 2 * index + (side === 'L' ? 0 : 1));

/** One round on a vehicle whose shape is known: heights, centre pins and lengths by the height model. */
export function bentRound(options: BentOptions): Round {
  const {
    stage = 'before',
    bent = () => ({}),
    missetRate = 0,
    misset,
    tramError = 0,
    hungTwice = false,
    pins = true,
  } = options;
  const { scatter = stage === 'before' ? 0.3 : 0.8, setting = 0.8 } = options;
  const random = new Random(options.seed);
  const body = STATIONS.map(({ x }) => {
    const at = (side: Side) => {
      const { up = 0, along = 0, across = 0 }: Moved = bent(x, side);
      return { up: up + random.normal(0, scatter), along, across };
    };
    return { L: at('L'), R: at('R') };
  });
  const setGauge = (x: number) => {
    const common = random.normal(0, setting * Math.SQRT1_2);
    const size = random.uniform(4, 19) * (random.chance(0.5) ? 1 : -1);
    const wrong = random.chance(missetRate) ? random.weighted([0.5, 0.25, 0.25]) : -1;
    const sure = misset?.get(x) ?? 0;
    const on = (s: number) =>
      common + random.normal(0, setting * Math.SQRT1_2) + sure + (wrong === 0 || wrong === s + 1 ? size : 0);
    return { L: on(0), R: on(1), aside: random.normal(0, setting) };
  };
  const set = STATIONS.map(({ x }) => setGauge(x));
  const setups: Setup[] = [];
  const hang = (gauge: string, kind: Setup['gaugeKind'], seen: Partial<Observation>[]) => {
    const takenAt = 1_700_000_000_000 + setups.length * 60_000;
    setups.push({
      label: `b1-${String(setups.length + 1).padStart(2, '0')}`,
      technician: 'T1',
      gauge,
      gaugeKind: kind,
      takenAt,
      observations: seen.map((one): Observation => ({
        ...{ quantity: 'height', point: '', side: null, section: null, station: null, zero: false },
        ...{ nominal: 250, tolerance: TOLERANCE, n: 1, deviation: 0, ss: 0, cause: null, takenAt },
        ...one,
      })),
    });
  };
  for (const [p, from, q, to] of LENGTHS) {
    const length = (moved: boolean) => {
      const [a, b] = [STATIONS[p], STATIONS[q]];
      const shift = (index: number, side: Side) => (moved ? body[index]?.[side] : undefined);
      const [m, n] = [shift(p, from), shift(q, to)];
      const sign = (side: Side) => (side === 'L' ? -1 : 1);
      return Math.hypot(
        (b?.x ?? 0) + (n?.along ?? 0) - (a?.x ?? 0) - (m?.along ?? 0),
        sign(to) * (b?.half ?? 0) + (n?.across ?? 0) - sign(from) * (a?.half ?? 0) - (m?.across ?? 0),
        (n?.up ?? 0) - (m?.up ?? 0),
      );
    };
    const section = STATIONS[p]?.section === 'center' ? STATIONS[q]?.section : STATIONS[p]?.section;
    hang('M1', 'tram', [
      {
        quantity: 'length',
        point: `${letter(p, from)}-${letter(q, to)}`,
        section: section ?? null,
        nominal: Math.round(length(false)),
        deviation:
          length(true) - length(false) + tramError + random.normal(0, setting) + random.normal(0, 0.5),
      },
    ]);
  }
  const order = [2, 3, 1, 0, 4, 5, ...(hungTwice ? [1, 0, 4, 5] : [])];
  order.forEach((g, turn) => {
    const station = STATIONS[g];
    if (station === undefined) return;
    if (turn >= STATIONS.length) set[g] = setGauge(station.x);
    const wb = (station.x - 1100) / 1500;
    const through = (value: (index: number) => number) => value(g) - (1 - wb) * value(2) - wb * value(3);
    const common = { section: station.section, station: station.x, zero: station.zero };
    hang(`G${g}`, 'centering', [
      ...SIDES.map((side) => ({
        ...common,
        point: letter(g, side),
        side,
        deviation:
          (station.zero ? 0 : through((i) => (body[i]?.[side].up ?? 0) + (set[i]?.[side] ?? 0))) +
          random.normal(0, 0.5),
      })),
      ...(pins
        ? [
            {
              ...common,
              quantity: 'centerline' as const,
              point: `C${g}`,
              nominal: 0,
              deviation:
                (station.zero
                  ? 0
                  : through(
                      (i) => ((body[i]?.L.across ?? 0) + (body[i]?.R.across ?? 0)) / 2 + (set[i]?.aside ?? 0),
                    )) + random.normal(0, 0.5),
            },
          ]
        : []),
    ]);
  });
  return { job: 'J1', sheet: 'S1', stage, attempt: 1, clearance: 0, setups };
}
