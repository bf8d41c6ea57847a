import fc from 'fast-check';
import type { HeightVerdict } from '@/lib/assess/types';
import type { Cause, Round } from '@/lib/measure/types';
import { type Hung, roundOf, type RoundParts } from '@/tests/simulation/round';

const CAUSES: Cause[] = ['neither', 'gauge', 'body', 'both'];

/** Tenths of a millimetre: mostly ordinary, some far out. */
const deviation = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: -20, max: 20 }).map((tenths) => tenths / 10) },
  { weight: 2, arbitrary: fc.integer({ min: -150, max: 150 }).map((tenths) => tenths / 10) },
);
const count = fc.integer({ min: 1, max: 3 });

export interface Options {
  /** Stations away from the zero stations. */
  stations?: { min: number; max: number };
  missingSides?: boolean;
  rehangs?: boolean;
  stage?: 'before' | 'after';
}

const PLACES = [0, 450, 3150, 3700, 1800, 4200];

/** A round of two zero gauges and some others, hung once or twice, each with one side or both. */
export function anyRound({
  stations = { min: 1, max: 3 },
  missingSides = true,
  rehangs = true,
  stage = 'before',
}: Options = {}): fc.Arbitrary<RoundParts> {
  const hang = (at: number): fc.Arbitrary<Hung> =>
    fc
      .record({
        left: deviation,
        right: deviation,
        nL: count,
        nR: count,
        sides: fc.constantFrom(
          'both',
          'both',
          'both',
          missingSides ? 'left' : 'both',
          missingSides ? 'right' : 'both',
        ),
        gauge: fc.constantFrom('G3', 'G4'),
        technician: fc.constantFrom('T1', 'T2'),
      })
      .map(({ left, right, nL, nR, sides, gauge, technician }) => ({
        at,
        gauge,
        technician,
        n: [nL, nR] as [number, number],
        nominal: [210, 210] as [number, number],
        ...(sides === 'right' ? {} : { left }),
        ...(sides === 'left' ? {} : { right }),
      }));
  const zero = (at: number, gauge: string): fc.Arbitrary<Hung> =>
    fc.tuple(deviation, deviation).map(([left, right]) => ({
      at,
      zero: true,
      left: left / 10,
      right: right / 10,
      gauge,
      nominal: [240, 240],
    }));
  return fc
    .record({
      count: fc.integer(stations),
      again: rehangs ? fc.integer({ min: -1, max: 2 }) : fc.constant(-1),
      clearance: fc.constantFrom(0, 50, 100),
    })
    .chain(({ count: places, again, clearance }) =>
      fc
        .tuple(
          fc.tuple(zero(1100, 'G1'), zero(2600, 'G2')),
          fc.tuple(...PLACES.slice(0, places).map(hang)),
          again >= 0 && again < places ? fc.tuple(hang(PLACES[again] ?? 0)) : fc.constant([] as Hung[]),
        )
        .map(([zeros, first, second]) => ({ hung: [...zeros, ...first, ...second], clearance, stage })),
    );
}

/** The round as seen in a mirror that exchanges left and right. */
export function mirrored(parts: RoundParts): Round {
  const round = roundOf(parts);
  return {
    ...round,
    setups: round.setups.map((setup) => ({
      ...setup,
      observations: setup.observations.map((seen) => ({
        ...seen,
        side: seen.side === null ? null : seen.side === 'L' ? ('R' as const) : ('L' as const),
      })),
    })),
  };
}

const keyOf = (height: HeightVerdict, mirror: boolean): string =>
  `${height.setup} ${mirror ? (height.side === 'L' ? 'R' : 'L') : height.side}`;

/** The largest difference of any probability, and of either part in mm, between two verdicts of the same heights. */
export function difference(
  one: readonly HeightVerdict[],
  other: readonly HeightVerdict[],
  mirror = false,
): { probability: number; mm: number } {
  const there = new Map(other.map((height) => [keyOf(height, mirror), height]));
  const worst = { probability: 0, mm: 0 };
  for (const height of one) {
    const twin = there.get(keyOf(height, false));
    if (!twin) throw new Error(`${height.setup} ${height.side} has no counterpart.`);
    for (const cause of CAUSES)
      worst.probability = Math.max(worst.probability, Math.abs(height.p[cause] - twin.p[cause]));
    worst.mm = Math.max(worst.mm, Math.abs(height.misset - twin.misset), Math.abs(height.body - twin.body));
  }
  return worst;
}
