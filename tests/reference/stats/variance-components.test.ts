import { describe, expect, it } from 'vitest';
import { fitVarianceComponents } from '@/lib/stats/variance-components';
import { readResults, readTable } from './read-table';

/**
 * REML fits of the data sets of lme4 and nlme, whole and unbalanced.
 * Source of every value: results.json beside the data (lme4 1.1-31, digits beyond lme4's from a dense-matrix
 * solution); tolerances as stated there.
 */
interface Case {
  id: string;
  data: string;
  response: string;
  fixed: string;
  reml: {
    sd: Record<string, number>;
    criterion: number;
    boundary: string[];
    fixed: Record<string, number>;
    fixed_se: Record<string, number>;
    blup: Record<string, Record<string, number>>;
  };
  interval_95: { reml_profile_sd: Record<string, { low: number; high: number }> };
}

const { cases } = readResults('01-variance-components/results.json') as { cases: Case[] };

function labelsOf(table: Record<string, string[]>, name: string): string[] {
  if (name === 'sample-in-batch') return table.sample ?? [];
  if (name === 'worker:machine')
    return (table.worker ?? []).map((w, i) => `${w}:${table.machine?.[i] ?? ''}`);
  return table[name] ?? [];
}

const within = (actual: number | null | undefined, expected: number, tolerance: number) => {
  expect(Math.abs((actual ?? NaN) - expected), `${String(actual)} against ${expected}`).toBeLessThanOrEqual(
    tolerance,
  );
};

describe.each(cases)('REML of $id', (reference) => {
  const table = readTable(`01-variance-components/${reference.data}`);
  const names = Object.keys(reference.reml.sd).filter((name) => name !== 'residual');
  const fit = fitVarianceComponents({
    values: (table[reference.response] ?? []).map(Number),
    random: Object.fromEntries(names.map((name) => [name, labelsOf(table, name)])),
    ...(reference.fixed === '~1' ? {} : { fixed: { machine: table.machine ?? [] } }),
  });
  const residual = reference.reml.sd.residual ?? NaN;
  const sdOf = (name: string) =>
    name === 'residual' ? fit.residual : fit.components.find((component) => component.name === name);

  it('has the standard deviations', () => {
    for (const [name, sd] of Object.entries(reference.reml.sd)) {
      if (reference.reml.boundary.includes(name)) expect(sdOf(name)?.sd).toBe(0);
      else within(sdOf(name)?.sd, sd, 1e-8 * sd);
    }
    expect(fit.components.filter(({ sd }) => sd === 0).map(({ name }) => name)).toEqual(
      reference.reml.boundary,
    );
  });

  it('has the criterion', () => within(fit.criterion, reference.reml.criterion, 1e-7));

  it('has the fixed effects', () => {
    const { '(Intercept)': mean = NaN, ...contrasts } = reference.reml.fixed;
    const { '(Intercept)': se = NaN, ...errors } = reference.reml.fixed_se;
    within(fit.intercept.estimate, mean, 1e-7 * se);
    within(fit.intercept.se, se, 1e-6 * se);
    for (const [name, value] of Object.entries(contrasts)) {
      const effect = fit.fixed.machine?.find(({ level }) => `machine${level}` === name);
      within(effect?.value, value, 1e-7 * (errors[name] ?? NaN));
      within(effect?.se, errors[name] ?? NaN, 1e-6 * (errors[name] ?? NaN));
    }
  });

  it('has the predictions', () => {
    for (const [name, levels] of Object.entries(reference.reml.blup)) {
      for (const [level, value] of Object.entries(levels)) {
        within(fit.effects[name]?.find((effect) => effect.level === level)?.value, value, 1e-6 * residual);
      }
    }
  });

  it('has the limits of the REML profile', () => {
    for (const [name, { low, high }] of Object.entries(reference.interval_95.reml_profile_sd)) {
      const tolerance = (limit: number) => (limit < 0.1 * residual ? 1e-4 : 1e-6) * limit;
      within(sdOf(name)?.low, low, tolerance(low));
      within(sdOf(name)?.high, high, tolerance(high));
    }
  });
});
