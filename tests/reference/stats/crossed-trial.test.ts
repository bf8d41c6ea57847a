import { describe, expect, it } from 'vitest';
import { crossedTrial } from '@/lib/stats/crossed-trial';
import { readResults, readTable } from './read-table';

/**
 * Balanced crossed trials. Source: results.json beside the data: the thermal-impedance study of Houf & Berman (1988),
 * IEEE Trans. Instrum. Meas. 37, 516–521, and two simulated ones; computed with R 4.2.2 (aov, qf, qchisq, lme4).
 */
type Named = Record<string, number | null>;
interface Case {
  id: string;
  data: string;
  anova: { df: Named; ss: Named; ms: Named; f: Named; p_value: Named };
  anova_variance: Named;
  anova_variance_truncated: Named;
  anova_combinations: Named;
  satterthwaite: Record<string, { df: number | null; low: number | null; high: number | null }>;
  mls: Record<string, { low: number; high: number; low_truncated: number; high_truncated: number }>;
  ndc_anova_truncated: { raw_sqrt2: number; truncated: number };
  reml: { variance: Named; boundary: string[]; ndc: { raw_sqrt2: number; truncated: number } };
}

const { cases } = readResults('06-crossed-study/results.json') as { cases: Case[] };

function near(
  actual: number | null | undefined,
  expected: number | null | undefined,
  relative: number,
): void {
  if (expected === null || expected === undefined) expect(actual).toBeNull();
  else {
    const error = Math.abs((actual ?? NaN) - expected);
    expect(error, `${String(actual)} against ${expected}`).toBeLessThanOrEqual(relative * Math.abs(expected));
  }
}

describe.each(cases)('crossed trial $id', (reference) => {
  const { part = [], operator = [], value = [] } = readTable(`06-crossed-study/${reference.data}`);
  const found = crossedTrial({ part, operator, value: value.map(Number), tolerance: 10 });
  const at = (record: Readonly<Record<string, number | null>> | null, name: string) => record?.[name];

  it('has the table', () => {
    for (const name of Object.keys(reference.anova.ss)) {
      const line = found.table?.[name as keyof typeof found.table];
      expect(line?.df).toBe(reference.anova.df[name]);
      near(line?.ss, reference.anova.ss[name], 1e-8);
      near(line?.ms, reference.anova.ms[name], 1e-8);
      near(line?.f, reference.anova.f[name], 1e-8);
      near(line?.p, reference.anova.p_value[name], 1e-8);
    }
  });

  it('has the components by both methods', () => {
    for (const [name, variance] of Object.entries({
      ...reference.anova_variance,
      ...reference.anova_combinations,
    })) {
      near(at(found.components.anova, name), variance, 1e-8);
    }
    for (const [name, variance] of Object.entries(reference.anova_variance_truncated)) {
      near(at(found.components.truncated, name), variance, 1e-8);
    }
    for (const [name, variance] of Object.entries(reference.reml.variance)) {
      if (reference.reml.boundary.includes(name)) expect(at(found.components.reml, name)).toBe(0);
      else near(at(found.components.reml, name), variance, 1e-6);
    }
  });

  it('has the limits', () => {
    for (const [name, limits] of Object.entries(reference.satterthwaite)) {
      const ours = found.intervals.satterthwaite?.[name as keyof typeof found.intervals.satterthwaite];
      near(ours?.df, limits.df, 1e-8);
      near(ours?.low, limits.low, 1e-8);
      near(ours?.high, limits.high, 1e-8);
    }
    for (const [name, limits] of Object.entries(reference.mls)) {
      const ours =
        found.intervals.modifiedLargeSample?.[name as keyof typeof found.intervals.modifiedLargeSample];
      near(ours?.low, limits.low, 1e-8);
      near(ours?.high, limits.high, 1e-8);
      near(ours?.lowTruncated, limits.low_truncated, 1e-8);
      near(ours?.highTruncated, limits.high_truncated, 1e-8);
    }
  });

  it('has the distinct categories and the share of the tolerance', () => {
    near(found.distinctCategories.anova?.raw, reference.ndc_anova_truncated.raw_sqrt2, 1e-8);
    expect(found.distinctCategories.anova?.count).toBe(reference.ndc_anova_truncated.truncated);
    near(found.distinctCategories.reml?.raw, reference.reml.ndc.raw_sqrt2, 1e-6);
    expect(found.distinctCategories.reml?.count).toBe(reference.reml.ndc.truncated);
    const gauge = found.components.truncated?.gauge ?? NaN;
    near(found.shareOfTolerance.anova, (6 * Math.sqrt(gauge)) / 20, 1e-12);
  });

  it('says in words what a negative estimate means', () => {
    const negative = Object.values(reference.anova_variance).filter((variance) => (variance ?? 0) < 0);
    expect(found.notes).toHaveLength(negative.length);
    for (const note of found.notes) expect(note).toContain('not that it is nil');
  });

  it('keeps the interaction at p of at most 0.25 and otherwise shows what pooling gives', () => {
    const kept = (reference.anova.p_value['part:operator'] ?? 1) <= 0.25;
    expect(found.interaction.kept).toBe(kept);
    expect(found.interaction.pooled === null).toBe(kept);
    if (found.interaction.pooled !== null) {
      const { table, components } = found.interaction.pooled;
      near(table.repeat.df, (reference.anova.df['part:operator'] ?? 0) + (reference.anova.df.repeat ?? 0), 0);
      // Without an interaction, no negative estimates and balance, both methods agree.
      if ((components.anova?.operator ?? -1) > 0)
        near(components.reml?.operator, components.anova?.operator, 1e-6);
    }
  });
});
