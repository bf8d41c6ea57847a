import { describe, expect, it } from 'vitest';
import { fitVarianceComponents } from '@/lib/stats/variance-components';
import { readResults } from './read-table';

/**
 * REML of simulated designs of every kind, a boundary case of each beside an inner one where there is one.
 * Source and tolerances: simulated-designs.json (dense-matrix solution in R 4.2.2).
 */
interface Case {
  id: string;
  values: number[];
  random: Record<string, string[]>;
  fixed: Record<string, string[]>;
  sd: Record<string, number>;
  criterion: number;
  intercept: { estimate: number; se: number };
  limits: Record<string, { low: number; high: number }>;
  blup: Record<string, Record<string, number>>;
}

const { cases } = readResults('01-variance-components/simulated-designs.json') as { cases: Case[] };

const within = (actual: number | null | undefined, expected: number, tolerance: number) => {
  expect(Math.abs((actual ?? NaN) - expected), `${String(actual)} against ${expected}`).toBeLessThanOrEqual(
    tolerance,
  );
};

describe.each(cases)('REML of $id', ({ values, random, fixed, sd, criterion, intercept, limits, blup }) => {
  const fit = fitVarianceComponents({ values, random, fixed });
  const of = (name: string) =>
    name === 'residual' ? fit.residual : fit.components.find((component) => component.name === name);
  const residual = sd.residual ?? NaN;

  it('has the estimates', () => {
    for (const [name, value] of Object.entries(sd)) within(of(name)?.sd, value, 1e-6 * value);
    within(fit.criterion, criterion, 1e-7);
    within(fit.intercept.estimate, intercept.estimate, 1e-6 * intercept.se);
    within(fit.intercept.se, intercept.se, 1e-6 * intercept.se);
  });

  it('has the limits of the REML profile', () => {
    for (const [name, { low, high }] of Object.entries(limits)) {
      within(of(name)?.low, low, (low < 0.1 * residual ? 1e-4 : 1e-6) * low);
      within(of(name)?.high, high, 1e-6 * high);
    }
  });

  it('has the predictions', () => {
    for (const [name, levels] of Object.entries(blup)) {
      for (const { level, value } of fit.effects[name] ?? []) {
        within(value, levels[String(level)] ?? NaN, 1e-6 * residual);
      }
    }
  });
});
