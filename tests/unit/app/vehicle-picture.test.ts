import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layoutOf, NARROW, vehicleDrawing, WIDE, type Scene } from '@/app/_figures/vehicle-picture';
import { hatched } from '@/app/_figures/vehicle-picture/hatched';
import { moved } from '@/app/_figures/vehicle-picture/key';
import { across, held } from '@/app/_figures/vehicle-picture/measure';
import { eitherSide } from '@/app/jobs/[job]/_picture/either-side';
import { path, type Shape } from '@/app/_figures/drawing/drawing';

/** A round with the same deviation on both sides of each station. */
function sceneOf(places: readonly (readonly [station: number, deviation: number])[]): Scene {
  const both = places.flatMap(([station, deviation], index) =>
    (['L', 'R'] as const).map((side) => ({
      station,
      deviation,
      side,
      letter: String.fromCharCode(65 + index),
    })),
  );
  return {
    points: both.map(({ letter, side, station }) => ({
      ...{ letter, side, station },
      ...{ section: 'front', height: 250, halfWidth: 440, placed: true, zero: false },
    })),
    zone: 'front',
    rounds: [
      {
        name: 'Before, round 1',
        heights: both.map(({ letter, side, deviation }) => ({
          ...{ letter, side, deviation, tolerance: 3, within: Math.abs(deviation) <= 3 },
          ...{ parts: { gauge: deviation, body: 0 }, call: 'likely-gauge' },
        })),
        lengths: [
          {
            name: 'A–B',
            ends: [
              { station: places[0]?.[0] ?? 0, side: 'L' },
              { station: places.at(-1)?.[0] ?? 0, side: 'R' },
            ],
            either: [],
            deviation: -7,
            within: false,
          },
        ],
        pins: [],
        datum: [],
      },
    ],
  };
}

const drawn = (scene: Scene, width: number) => {
  const [round] = scene.rounds;
  if (round === undefined) throw new Error('The scene has a round.');
  return vehicleDrawing(scene, round, { width });
};

/** Every absolute place that a shape names. */
function placesOf(shape: Shape): [number, number][] {
  if (shape.kind !== 'path') return [[shape.x, shape.y]];
  return [...shape.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

describe('the picture of a vehicle', () => {
  test('has the front at the left and, from below, the left side above', () => {
    const layout = layoutOf(
      sceneOf([
        [0, 6],
        [4000, -6],
      ]),
      WIDE,
    );
    expect(layout.x(0)).toBeLessThan(layout.x(4000));
    expect(across(layout, 'L', 440)).toBeLessThan(across(layout, 'R', 440));
  });

  test('is drawn at the scale that it states', () => {
    for (const width of [WIDE, NARROW]) {
      const layout = layoutOf(
        sceneOf([
          [0, 2],
          [4000, -9],
        ]),
        width,
      );
      expect(layout.deviation / (layout.x(1) - layout.x(0))).toBeCloseTo(layout.exaggeration, 9);
      const told = drawn(
        sceneOf([
          [0, 2],
          [4000, -9],
        ]),
        width,
      ).shapes.flatMap((shape) => (shape.kind === 'word' ? [shape.text] : []));
      expect(told.join(' ')).toContain(`drawn ${layout.exaggeration} : 1`);
    }
  });

  test('cuts off one slip of a hundred millimetres, and does not flatten the others', () => {
    const layout = layoutOf(
      sceneOf([
        [0, 100],
        [4000, 2],
      ]),
      WIDE,
    );
    expect(layout.limit).toBe(12);
    expect(held(layout, 100)).toBe(12);
    expect(held(layout, -100)).toBe(-12);
    expect(3 * layout.deviation).toBeGreaterThan(8);
  });

  test('keeps within its field whatever is read', () => {
    const some = fc.array(
      fc.tuple(fc.integer({ min: -5000, max: 9000 }), fc.double({ min: -300, max: 300, noNaN: true })),
      { minLength: 2, maxLength: 8 },
    );
    fc.assert(
      fc.property(some, fc.constantFrom(WIDE, NARROW), (places, width) => {
        const picture = drawn(sceneOf(places), width);
        for (const [x, y] of picture.shapes.flatMap(placesOf)) {
          expect(x).toBeGreaterThanOrEqual(-1);
          expect(x).toBeLessThanOrEqual(picture.width + 1);
          expect(y).toBeGreaterThanOrEqual(-1);
          expect(y).toBeLessThanOrEqual(picture.height + 1);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('says what it shows: every height by side, and which lengths are out', () => {
    expect(
      drawn(
        sceneOf([
          [0, 6.2],
          [4000, -1],
        ]),
        WIDE,
      ).label,
    ).toBe(
      'Before, round 1. The vehicle from below and from both sides, deviations from the sheet. ' +
        'Left side, front to rear: A +6.2 mm, likely gauge; B −1.0 mm, likely gauge. '.replaceAll(
          ' mm',
          '\u00a0mm',
        ) +
        'Right side, front to rear: A +6.2 mm, likely gauge; B −1.0 mm, likely gauge. '.replaceAll(
          ' mm',
          '\u00a0mm',
        ) +
        'Lengths out of tolerance: A–B −7.0\u00a0mm. Hit at the front, by the readings before the repair.',
    );
  });

  test('draws a length that does not say its side wherever it may lie, once with its name and number', () => {
    const scene = sceneOf([
      [0, 2],
      [4000, 0],
    ]);
    // Half width 440: across, the ends are 880 mm apart, so the diagonal has hypot(4000, 880) = 4095.7 mm.
    const straight = eitherSide({ point: 'A-B', nominal: 4000 }, scene.points);
    const diagonal = eitherSide({ point: 'A-B', nominal: 4096 }, scene.points);
    const sides = (lines: typeof straight) => lines.map((line) => line.map(({ side }) => side).join(''));
    expect(sides(straight)).toEqual(['LL', 'RR']);
    expect(sides(diagonal)).toEqual(['LR', 'RL']);
    expect(eitherSide({ point: 'A-Z', nominal: 4000 }, scene.points)).toEqual([]);
    for (const either of [straight, diagonal]) {
      const [round] = scene.rounds;
      if (round === undefined) throw new Error('The scene has a round.');
      const lengths = round.lengths.map((one) => ({ ...one, ends: null, either }));
      const { shapes } = vehicleDrawing(scene, { ...round, lengths }, { width: WIDE });
      const lines = shapes.filter(
        (one) => one.kind === 'path' && one.ink === 'lengthOut' && placesOf(one).length === 2,
      );
      expect(lines.slice(0, 2)).toHaveLength(2);
      expect(shapes.filter((one) => one.kind === 'word' && one.text === 'A–B −7.0')).toHaveLength(1);
    }
  });

  test('hatches the part of the gauge, so that it is told from the body’s without colour', () => {
    const [box, strokes] = hatched(0, 8, 10, 40);
    expect(box).toMatchObject({ ink: 'gaugePart' });
    const lines = strokes?.kind === 'path' ? strokes.d.split('M').slice(1) : [];
    expect(lines.length).toBeGreaterThan(5);
    for (const [x, y] of strokes === undefined ? [] : placesOf(strokes)) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(8);
      expect(y).toBeGreaterThanOrEqual(10);
      expect(y).toBeLessThanOrEqual(40);
    }
  });

  test('moves a stroke as a whole', () => {
    expect(moved(path('axis', 'M1 2H5V7l3 4Q1 1 2 2z'), 10, 100)).toMatchObject({
      d: 'M11 102H15V107l3 4Q11 101 12 102z',
    });
  });
});
