import { describe, expect, it } from 'vitest';
import { grouped } from '@/lib/measure/grouped';
import { dimensionKey, lengthEnds, type Side } from '@/lib/measure';
import type { Sheet } from '@/lib/store';
import { demoShop } from '@/seed';

const { sheets } = demoShop();
const names = sheets.map((sheet) => [sheet.name, sheet] as const);

/** Where a point is, from nothing but what the stored sheet says. */
function place(sheet: Sheet, letter: string, side: Side | null) {
  const point = sheet.points.find((one) => one.letter === letter && (side === null || one.side === side));
  const height = sheet.dimensions.find(
    (one) => one.quantity === 'height' && one.point === letter && one.side === point?.side,
  );
  if (point?.station == null || point.halfWidth === null || height === undefined) {
    throw new Error(`${sheet.name} has no point ${letter}`);
  }
  return [point.station, point.side === 'L' ? -point.halfWidth : point.halfWidth, height.nominal] as const;
}

describe('demo sheets', () => {
  it('are eight, some with a letter for each side and some with shared letters', () => {
    expect(sheets).toHaveLength(8);
    const shared = sheets.filter(
      (sheet) => new Set(sheet.points.map((p) => p.letter)).size < sheet.points.length,
    );
    expect(shared.map((sheet) => sheet.name)).toEqual(['Small saloon', 'Coupe', 'Panel van']);
  });

  it.each(names)(
    '%s has four to seven stations, with two zero stations in the center section',
    (_, sheet) => {
      const stations = new Map(sheet.points.map((point) => [point.station, point]));
      expect(stations.size).toBeGreaterThanOrEqual(4);
      expect(stations.size).toBeLessThanOrEqual(7);
      const zeros = [...stations.values()].filter((point) => point.zero);
      expect(zeros.map((point) => point.section)).toEqual(['center', 'center']);
    },
  );

  it.each(names)('%s names every dimension once', (_, sheet) => {
    const keys = sheet.dimensions.map(dimensionKey);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it.each(names)('%s has lengths that fit its coordinates to half a millimetre', (_, sheet) => {
    const lengths = sheet.dimensions.filter((dimension) => dimension.quantity === 'length');
    expect(lengths.length).toBeGreaterThanOrEqual(10);
    for (const length of lengths) {
      const ends = lengthEnds(length.point);
      if (ends === null) throw new Error(`${length.point} is not a length`);
      const [a, b] = ends.map((end) => place(sheet, end.point, end.side));
      if (a === undefined || b === undefined) throw new Error(`${length.point} has not got two ends`);
      const distance = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
      expect(Math.abs(length.nominal - distance), length.point).toBeLessThanOrEqual(0.5);
    }
  });

  it('have a station with unequal sides somewhere, so that exchanged sides can show', () => {
    const unequal = sheets.filter((sheet) => {
      const heights = sheet.dimensions.filter((d) => d.quantity === 'height');
      return [...grouped(heights, (d) => d.station).values()].some(
        ([left, right]) => left?.nominal !== right?.nominal,
      );
    });
    expect(unequal.length).toBeGreaterThan(3);
  });
});
