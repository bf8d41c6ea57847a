import { describe, expect, it } from 'vitest';
import { oneWayAnova } from '@/lib/stats/anova';
import { readResults, readTable } from './read-table';

/**
 * NIST Statistical Reference Datasets, one-way analysis of variance (US government work).
 *
 * `exact_on_nearest_doubles` is the exact result for the readings as doubles: the sharp test. The certified value
 * also measures how far the readings moved when they became doubles, hence the smaller numbers of digits.
 */
interface Figures {
  ss_between: number;
  ms_between: number;
  f: number;
  ss_within: number;
  ms_within: number;
  r_squared: number;
  residual_sd: number;
}

interface Case {
  id: string;
  data: string | null;
  n: number;
  generation?: { base: string; group_centre_tenths: number[]; replicates: number };
  certified: Figures & { df_between: number; df_within: number };
  exact_on_nearest_doubles: Figures;
}

const DIGITS: Record<string, number> = { AtmWtAg: 9.5, SiRstv: 12.5, SmLs01: 13, SmLs02: 13, SmLs03: 13 };

const { cases } = readResults('02-strd-anova/certified.json') as { cases: Case[] };

function groupsOf(reference: Case): number[][] {
  const groups = new Map<string, number[]>();
  if (reference.data !== null) {
    const { group, treatment, value, response, ...rest } = readTable(`02-strd-anova/${reference.data}`);
    const labels = group ?? treatment ?? Object.values(rest)[0] ?? [];
    const values = value ?? response ?? Object.values(rest)[1] ?? [];
    labels.forEach((label, i) => {
      const list = groups.get(label) ?? [];
      list.push(Number(values[i]));
      groups.set(label, list);
    });
    return [...groups.values()];
  }
  const { base = '0', group_centre_tenths: centres = [], replicates = 0 } = reference.generation ?? {};
  return centres.map((centre) =>
    Array.from({ length: replicates }, (_, j) => {
      const tenths = j === 0 ? centre : j % 2 === 1 ? centre - 1 : centre + 1;
      return (10 * Number(base) + tenths) / 10;
    }),
  );
}

describe.each(cases)('$id', (reference) => {
  const groups = groupsOf(reference);
  const found = oneWayAnova(groups);
  const figures: Record<keyof Figures, number | null> = {
    ss_between: found.between.ss,
    ms_between: found.between.ms,
    f: found.f,
    ss_within: found.within.ss,
    ms_within: found.within.ms,
    r_squared: found.rSquared,
    residual_sd: found.residualSd,
  };

  it('has every reading and the degrees of freedom', () => {
    expect(groups.flat()).toHaveLength(reference.n);
    expect(found.between.df).toBe(reference.certified.df_between);
    expect(found.within.df).toBe(reference.certified.df_within);
  });

  it.each(Object.keys(figures) as (keyof Figures)[])('%s is that of the readings as doubles', (name) => {
    const exact = reference.exact_on_nearest_doubles[name];
    expect(Math.abs((figures[name] ?? NaN) - exact) / exact).toBeLessThan(1e-13);
  });

  it.each(Object.keys(figures) as (keyof Figures)[])('%s has the certified digits', (name) => {
    const certified = reference.certified[name];
    const error = Math.abs((figures[name] ?? NaN) - certified) / certified;
    expect(error === 0 ? 15 : -Math.log10(error)).toBeGreaterThanOrEqual(DIGITS[reference.id] ?? 9);
  });
});

describe('the upper tail of F', () => {
  it('keeps its digits where the probability is small', () => {
    const groups = [
      [1, 2, 3],
      [11, 12, 13],
      [21, 22, 23],
    ];
    // F = 300 on 2 and 6 df: p = (1 + F/3)^-3 in closed form.
    expect(oneWayAnova(groups).p).toBeCloseTo((1 + 300 / 3) ** -3, 18);
  });
});
