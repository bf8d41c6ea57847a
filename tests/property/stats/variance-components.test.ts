import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitCollapsedVarianceComponents,
  fitVarianceComponents,
  type VarianceComponents,
} from '@/lib/stats/variance-components';
import { collapse } from '@/lib/stats/collapse';
import { seededNormal, seededUniform } from './seeded-normal';

/** A small shop: setups nested in dimensions, crossed with technicians, one to three readings each. */
interface Shop {
  values: number[];
  dimension: string[];
  technician: string[];
  setup: string[];
}

function shopFrom(seed: number): Shop {
  const uniform = seededUniform(seed);
  const normal = seededNormal(uniform);
  const pick = (count: number) => Math.floor(uniform() * count);
  const spread = [0, 0.3, 1, 3];
  const sds = {
    dimension: spread[pick(4)] ?? 0,
    technician: spread[pick(4)] ?? 0,
    setup: spread[pick(4)] ?? 0,
  };
  const technicians = Array.from({ length: 3 + pick(3) }, () => normal() * sds.technician);
  const shop: Shop = { values: [], dimension: [], technician: [], setup: [] };
  for (let d = 0; d < 5; d++) {
    const dimension = normal() * sds.dimension;
    for (let s = 0; s < 2 + pick(3); s++) {
      const setup = normal() * sds.setup;
      const technician = pick(technicians.length);
      for (let k = 0; k <= 1 + pick(2); k++) {
        shop.values.push(dimension + (technicians[technician] ?? 0) + setup + 0.5 * normal());
        shop.dimension.push(`d${d}`);
        shop.technician.push(`t${technician}`);
        shop.setup.push(`d${d} s${s}`);
      }
    }
  }
  return shop;
}

const shops = fc.integer({ min: 1, max: 1_000_000 }).map(shopFrom);
const runs = { numRuns: 25, seed: 20240601 };

const fit = ({ values, dimension, technician, setup }: Shop): VarianceComponents =>
  fitVarianceComponents({ values, random: { dimension, technician, setup } });

/** Every number of a fit that has the unit of the readings. */
function lengths({ components, residual }: VarianceComponents): number[] {
  return [...components, residual].flatMap(({ sd, low, high }) => [sd ?? NaN, low ?? NaN, high ?? NaN]);
}

function expectNear(actual: readonly number[], expected: readonly number[], tolerance = 1e-6): void {
  expect(actual).toHaveLength(expected.length);
  const unit = Math.max(...expected.filter(Number.isFinite).map(Math.abs), 1e-9);
  actual.forEach((value, i) => {
    const other = expected[i] ?? NaN;
    // A variance next to 0 is known to the digits of the variance, not of the sd.
    const near = Math.max(tolerance * Math.abs(other), tolerance * 1e-1 * Math.min(1, unit));
    expect(Math.abs(value - other), `${value} against ${other}`).toBeLessThanOrEqual(near);
  });
}

const moved = ({ effects }: VarianceComponents): [string, number][] =>
  Object.entries(effects).flatMap(([name, levels]) =>
    levels.map(({ level, value }): [string, number] => [`${name} ${level}`, value ?? NaN]),
  );

describe('fitVarianceComponents', () => {
  it('does not see a constant added to all readings, but in the intercept', () => {
    fc.assert(
      fc.property(shops, fc.constantFrom(-1000, 0.125, 4096), (shop, shift) => {
        const [before, after] = [
          fit(shop),
          fit({ ...shop, values: shop.values.map((value) => value + shift) }),
        ];
        expectNear(lengths(after), lengths(before));
        expect(after.criterion).toBeCloseTo(before.criterion ?? NaN, 7);
        expect(after.intercept.estimate).toBeCloseTo((before.intercept.estimate ?? NaN) + shift, 7);
      }),
      runs,
    );
  });

  it('has all its lengths multiplied when the unit changes, and the criterion by its Jacobian', () => {
    fc.assert(
      fc.property(shops, fc.constantFrom(0.001, 25.4, 1e5), (shop, scale) => {
        const [before, after] = [
          fit(shop),
          fit({ ...shop, values: shop.values.map((value) => value * scale) }),
        ];
        expectNear(
          lengths(after).map((length) => length / scale),
          lengths(before),
        );
        const jacobian = 2 * (shop.values.length - 1) * Math.log(scale);
        expect(after.criterion).toBeCloseTo((before.criterion ?? NaN) + jacobian, 6);
      }),
      runs,
    );
  });

  it('sees neither the order of the readings nor the names of the levels', () => {
    fc.assert(
      fc.property(shops, fc.integer({ min: 1, max: 1e6 }), (shop, seed) => {
        const uniform = seededUniform(seed);
        const order = shop.values.map((_, i) => ({ i, key: uniform() })).sort((a, b) => a.key - b.key);
        const shuffled = <T>(list: readonly T[]): T[] => order.flatMap(({ i }) => list.slice(i, i + 1));
        const after = fit({
          values: shuffled(shop.values),
          dimension: shuffled(shop.dimension).map((name) => `renamed ${9 - Number(name.slice(1))}`),
          technician: shuffled(shop.technician),
          setup: shuffled(shop.setup),
        });
        const before = fit(shop);
        expectNear(lengths(after), lengths(before));
        const technicians = (found: VarianceComponents) =>
          moved(found).filter(([name]) => name.startsWith('technician'));
        expect(technicians(after).map(([name]) => name)).toEqual(technicians(before).map(([name]) => name));
        expectNear(
          technicians(after).map(([, value]) => value),
          technicians(before).map(([, value]) => value),
          1e-5,
        );
      }),
      runs,
    );
  });

  it('is the same on readings and on collapsed setups, with codes that no setup has', () => {
    fc.assert(
      fc.property(shops, (shop) => {
        const names = [...new Set(shop.setup)];
        const groups = names.map((name) => collapse(shop.values.filter((_, i) => shop.setup[i] === name)));
        const codeOf = (labels: readonly string[]) => {
          const known = [...new Set(labels)].sort();
          // Every second code stays unused.
          return names.map((name) => 2 * known.indexOf(labels[shop.setup.indexOf(name)] ?? '') + 1);
        };
        const collapsed = fitCollapsedVarianceComponents({
          n: groups.map(({ n }) => n),
          mean: groups.map(({ mean }) => mean),
          ss: groups.map(({ ss }) => ss),
          random: { dimension: codeOf(shop.dimension), technician: codeOf(shop.technician) },
        });
        const whole = fit(shop);
        expectNear(
          [...collapsed.components, collapsed.residual].flatMap(({ sd, low, high }) => [
            sd ?? NaN,
            low ?? NaN,
            high ?? NaN,
          ]),
          lengths(whole),
        );
        expect(collapsed.criterion).toBeCloseTo(whole.criterion ?? NaN, 7);
        whole.effects.technician?.forEach(({ value, se }, code) => {
          expect(collapsed.effects.technician?.value[2 * code + 1]).toBeCloseTo(value ?? NaN, 6);
          expect(collapsed.effects.technician?.se[2 * code + 1]).toBeCloseTo(se ?? NaN, 6);
          expect(collapsed.effects.technician?.value[2 * code]).toBe(0);
        });
      }),
      runs,
    );
  });

  it('has limits on both sides of every estimate', () => {
    fc.assert(
      fc.property(shops, (shop) => {
        const found = fit(shop);
        for (const { sd, low, high } of [...found.components, found.residual]) {
          expect(low).toBeLessThanOrEqual((sd ?? NaN) * (1 + 1e-9));
          expect(high).toBeGreaterThan(sd ?? NaN);
        }
      }),
      runs,
    );
  });

  it('at a wider level has wider limits', () => {
    fc.assert(
      fc.property(shops, ({ values, dimension, technician, setup }) => {
        const random = { dimension, technician, setup };
        const [narrow, wide] = [0.8, 0.99].map((level) => fitVarianceComponents({ values, random, level }));
        narrow?.components.forEach(({ low, high }, i) => {
          expect(wide?.components[i]?.low).toBeLessThanOrEqual(low ?? NaN);
          expect(wide?.components[i]?.high).toBeGreaterThan(high ?? NaN);
        });
      }),
      runs,
    );
  });
});
