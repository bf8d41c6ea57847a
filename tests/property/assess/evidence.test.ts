import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeRound } from '@/lib/assess/cause/judge';
import type { HeightVerdict } from '@/lib/assess/types';
import type { Learned } from '@/lib/assess/cause/learned';
import { assessRound } from '@/lib/assess/round';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf, type RoundParts } from '@/tests/simulation/round';

const shop = knownShop();
const RUNS = { seed: 71, numRuns: 12 };

/** A height that is out by 4.5 to 14 mm, up or down, on one side or both. */
const out = fc
  .record({
    size: fc.integer({ min: 45, max: 140 }),
    sign: fc.constantFrom(-1, 1),
    both: fc.boolean(),
    wobble: fc.integer({ min: -5, max: 5 }),
  })
  .map(({ size, sign, both, wobble }) => ({
    left: (sign * size) / 10,
    right: both ? (sign * (size + wobble)) / 10 : wobble / 10,
  }));

const base = (front: Hung[], lengths: RoundParts['lengths'] = []): RoundParts => ({
  hung: [
    { at: 1100, zero: true, left: 0.1, right: 0 },
    { at: 2600, zero: true, left: 0, right: -0.1 },
    ...front,
    { at: 3100, left: 0.3, right: -0.2, n: [2, 2] },
  ],
  lengths,
});

function front(parts: RoundParts, learned: Learned = shop): { gauge: number; body: number } {
  const found = judgeRound(roundOf(parts), learned);
  if ('why' in found) throw new Error(found.why);
  const height = found.heights.find((one) => one.station === 0 && one.side === 'L');
  return { gauge: height?.p.gauge ?? NaN, body: (height?.p.body ?? NaN) + (height?.p.both ?? NaN) };
}

describe('evidence on a height that is out', () => {
  it('speaks for the body when the gauge is hung again and repeats', () => {
    fc.assert(
      fc.property(out, fc.integer({ min: -5, max: 5 }), ({ left, right }, wobble) => {
        const once = front(base([{ at: 0, left, right }]));
        const twice = front(
          base([
            { at: 0, left, right },
            { at: 0, left: left + wobble / 10, right: right - wobble / 10 },
          ]),
        );
        expect(twice.body).toBeGreaterThanOrEqual(once.body);
        expect(twice.gauge).toBeLessThanOrEqual(once.gauge);
        expect(twice.body).toBeGreaterThan(0.8);
      }),
      RUNS,
    );
  });

  it('speaks for the gauge when the gauge is hung again and comes right', () => {
    fc.assert(
      fc.property(out, fc.integer({ min: -8, max: 8 }), ({ left, right }, wobble) => {
        const once = front(base([{ at: 0, left, right }]));
        const twice = front(
          base([
            { at: 0, left, right },
            { at: 0, left: wobble / 10, right: -wobble / 10 },
          ]),
        );
        expect(twice.gauge).toBeGreaterThanOrEqual(once.gauge);
        expect(twice.body).toBeLessThanOrEqual(once.body);
        expect(twice.gauge).toBeGreaterThan(0.8);
      }),
      RUNS,
    );
  });

  it('speaks for the body when a length at the point is out, against it when it is within', () => {
    fc.assert(
      fc.property(out, fc.integer({ min: 50, max: 110 }), fc.constantFrom(-1, 1), (height, tenths, sign) => {
        const hung: Hung[] = [{ at: 0, ...height }];
        // A is the left point at the front, C the left zero point behind it.
        const unknown = front(base(hung));
        const damaged = front(
          base(hung, [{ point: 'A-C', deviation: (sign * tenths) / 10, section: 'front' }]),
        );
        const sound = front(base(hung, [{ point: 'A-C', deviation: 0.2, section: 'front' }]));
        expect(damaged.body).toBeGreaterThanOrEqual(unknown.body);
        expect(sound.body).toBeLessThanOrEqual(unknown.body);
      }),
      RUNS,
    );
  });

  it('gains nothing from a length between other points', () => {
    const height = { at: 0, left: 6, right: 6.2 };
    const unknown = front(base([height]));
    const other = front(base([height], [{ point: 'X-Y', deviation: 9, section: 'rear' }]));
    expect(other).toEqual(unknown);
  });

  it('counts for the gauge in the hands of someone who often sets it wrong', () => {
    fc.assert(
      fc.property(out, (height) => {
        const at = (missetRate: number) =>
          front(base([{ at: 0, ...height }]), knownShop({ technicians: { T1: { missetRate } } }));
        expect(at(0.2).gauge).toBeGreaterThan(at(0.02).gauge);
        expect(at(0.2).body).toBeLessThan(at(0.02).body);
      }),
      RUNS,
    );
  });

  it('follows what a re-check proved', () => {
    for (const cause of ['gauge', 'body'] as const) {
      const plain = front(base([{ at: 0, left: 6, right: 6.2 }]));
      const proved = front(base([{ at: 0, left: 6, right: 6.2, cause }]));
      expect(proved[cause]).toBeGreaterThan(Math.max(0.8, plain[cause]));
    }
  });
});

describe('a zero gauge that was set wrong', () => {
  it('is found by the straight line on which the other stations lie, four stations and more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 120 }),
        fc.constantFrom(-1, 1),
        fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 8, maxLength: 8 }),
        (tenths, sign, wobble) => {
          const error = (sign * tenths) / 10;
          const places = [0, 500, 3150, 3900];
          const hung: Hung[] = [
            { at: 1100, zero: true, left: 0, right: 0 },
            { at: 2600, zero: true, left: 0, right: 0 },
            ...places.map((at, i): Hung => ({
              at,
              n: [2, 2],
              left: -error * ((at - 1100) / 1500) + (wobble[2 * i] ?? 0) / 10,
              right: -error * ((at - 1100) / 1500) + (wobble[2 * i + 1] ?? 0) / 10,
            })),
          ];
          const { heights, pZeroMisset, datum } = assessRound(roundOf({ hung, stage: 'after' }), shop);
          expect(pZeroMisset).toBeGreaterThan(0.7);
          const far = heights.filter((one) => one.station === 3900);
          for (const one of far) expect(one.p.gauge).toBeGreaterThan(0.7);
          for (const line of datum) {
            expect(Math.abs(line.rear.error - error)).toBeLessThan(2.5);
            expect(Math.abs(line.front.error)).toBeLessThan(2.5);
          }
        },
      ),
      RUNS,
    );
  });

  it('is gone from the datum when that gauge was set and hung anew', () => {
    const lever = (at: number): number => (at - 1100) / 1500;
    const places = [0, 500, 3150, 3900];
    const hung: Hung[] = [
      { at: 1100, zero: true, left: 0, right: 0 },
      { at: 2600, zero: true, left: 0, right: 0 },
      ...places.map((at): Hung => ({ at, left: -7 * lever(at), right: -7 * lever(at) + 0.2 })),
      { at: 2600, zero: true, left: 0, right: 0 },
      ...places.map((at): Hung => ({ at, left: 0.3, right: -0.2 })),
    ];
    const { heights, datum, pZeroMisset } = assessRound(roundOf({ hung, stage: 'after' }), shop);
    const setup = (label: string): HeightVerdict[] => heights.filter((one) => one.setup === label);
    for (const one of setup('b1-02')) expect(one.p.gauge).toBeGreaterThan(0.95);
    for (const one of setup('b1-07')) expect(one.p.neither).toBeGreaterThan(0.9);
    for (const one of setup('b1-06')) expect(one.p.gauge).toBeGreaterThan(0.95);
    expect(pZeroMisset).toBeGreaterThan(0.95);
    for (const line of datum) expect(Math.abs(line.rear.error)).toBeLessThan(1);
  });
});

describe('a round of any shape', () => {
  const places = [0, 400, 1900, 3000, 3500, 4000];
  const shapes: { what: string; hung: Hung[] }[] = [
    {
      what: 'three stations',
      hung: [{ at: 0, left: 5.1, right: 0.2 }],
    },
    {
      what: 'eight stations',
      hung: places.map((at, i): Hung => ({ at, left: i === 0 ? 7 : 0.3, right: i === 0 ? 6.8 : -0.3 })),
    },
    { what: 'only left sides', hung: places.slice(0, 3).map((at) => ({ at, left: 4 - at / 1000 })) },
    { what: 'only right sides', hung: places.slice(0, 3).map((at) => ({ at, right: 4 - at / 1000 })) },
    {
      what: 'strut gauges',
      hung: [
        { at: 400, left: 6, right: 0.4, gaugeKind: 'strut', gauge: 'S1' },
        { at: 3500, left: 0.2, right: 0.1, gaugeKind: 'strut', gauge: 'S1' },
      ],
    },
    { what: 'a reading far beyond every hypothesis', hung: [{ at: 0, left: 480, right: -350 }] },
    {
      what: 'hands and gauges not met before',
      hung: [{ at: 0, left: 6, right: 6, technician: 'new', gauge: 'G99' }],
    },
    {
      what: 'one gauge hung five times',
      hung: [6, 6.2, 5.9, 6.3, 6].map((left) => ({ at: 0, left, right: 0.1 })),
    },
    { what: 'no station beyond the zero stations', hung: [] },
  ];

  it.each(shapes)('has a verdict on every height: $what', ({ hung }) => {
    const round = roundOf({
      hung: [
        { at: 1100, zero: true, left: 0, right: 0 },
        { at: 2600, zero: true, left: 0, right: 0 },
        ...hung,
      ],
      clearance: 100,
    });
    const { heights, pZeroMisset, nextChecks } = assessRound(round, shop);
    expect(heights.length).toBe(round.setups.flatMap((setup) => setup.observations).length);
    for (const height of heights) {
      expect(Object.values(height.p).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
      expect(Number.isFinite(height.misset + height.body)).toBe(true);
    }
    expect(pZeroMisset).toBeGreaterThanOrEqual(0);
    expect(pZeroMisset).toBeLessThanOrEqual(1);
    for (const check of nextChecks) expect(Number.isFinite(check.gainBits)).toBe(true);
  });

  it('reads out that a reading far beyond everything is out', () => {
    const { heights } = assessRound(
      roundOf({
        hung: [
          { at: 1100, zero: true, left: 0, right: 0 },
          { at: 2600, zero: true, left: 0, right: 0 },
          { at: 0, left: 480, right: -350 },
        ],
      }),
      shop,
    );
    for (const height of heights.filter((one) => !one.zero)) expect(height.p.neither).toBeLessThan(0.01);
  });
});
