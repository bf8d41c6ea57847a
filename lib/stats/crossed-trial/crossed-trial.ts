import { requireAllFinite, requireEqualLengths, requireLevel, requirePositive } from '@/lib/stats/arguments';
import { anovaSide } from './anova-side';
import { arrangeTrial } from './arrange-trial';
import { balancedTable, pooledTable, type BalancedTrial } from './balanced-table';
import { distinctCategories, shareOfTolerance } from './gauge-figures';
import { remlSide } from './reml-side';
import { trialNotes } from './trial-notes';
import type { CrossedTrial, CrossedTrialInput, PooledTrial, Table } from './types';

/** Above this probability the interaction is pooled with the repeats. */
const POOL_ABOVE = 0.25;

const RULE =
  `The part by operator interaction is kept where its F test has p of at most ${POOL_ABOVE}, and pooled with the ` +
  'repeats where p is above (Bozivich, Bancroft & Hartley 1956).';

/**
 * A designed trial in which every operator reads every part: where the scatter of a reading comes from.
 *
 * ANOVA and REML stand side by side, both factors random. `table`, `components` and `intervals` always have the
 * interaction in; `interaction.kept` says by the stated rule whether it should stay, and `interaction.pooled` holds
 * what pooling gives where it should not. An unbalanced trial has REML only (`table` null, `why` says so).
 * RangeError for readings that are not finite, lists of unequal length, or a tolerance that is not above 0.
 * Source: Burdick & Graybill (1992), Confidence Intervals on Variance Components, chapter 6; pooling rule Bozivich,
 * Bancroft & Hartley (1956), Ann. Math. Statist. 27, 1017–1043; checked against Houf & Berman (1988).
 */
export function crossedTrial(input: CrossedTrialInput): CrossedTrial {
  const { part, operator, value, tolerance, level = 0.95 } = input;
  requireAllFinite('Readings', value);
  requireEqualLengths('Parts', part, 'readings', value);
  requireEqualLengths('Operators', operator, 'readings', value);
  requireLevel('The level of an interval', level);
  if (tolerance !== undefined) requirePositive('The half width of the tolerance', tolerance);
  const trial = arrangeTrial(input);
  if ('why' in trial) return withoutTable(input, trial.why);
  const table = balancedTable(trial);
  const interaction = trial.repeats > 1;
  const anova = anovaSide(table, trial, interaction, level);
  const reml = remlSide(input, interaction);
  const { p } = table['part:operator'];
  const kept = !interaction || p === null || p <= POOL_ABOVE;
  return {
    table,
    components: { anova: anova.variances, truncated: anova.truncated, reml: reml.variances },
    intervals: {
      satterthwaite: anova.satterthwaite,
      modifiedLargeSample: anova.modifiedLargeSample,
      reml: reml.limits,
    },
    shareOfTolerance: {
      anova: shareOfTolerance(anova.truncated, tolerance),
      reml: shareOfTolerance(reml.variances, tolerance),
    },
    distinctCategories: {
      anova: distinctCategories(anova.truncated),
      reml: distinctCategories(reml.variances),
    },
    interaction: { kept, p, rule: RULE, pooled: kept ? null : pooledTrial(input, table, trial) },
    notes: trialNotes(anova.variances, trial.repeats),
    why: null,
  };
}

function pooledTrial(input: CrossedTrialInput, full: Table, trial: BalancedTrial): PooledTrial {
  const table = pooledTable(full);
  const { variances, truncated } = anovaSide(table, trial, false, input.level ?? 0.95);
  const reml = remlSide(input, false).variances;
  return {
    table,
    components: { anova: variances, truncated, reml },
    shareOfTolerance: {
      anova: shareOfTolerance(truncated, input.tolerance),
      reml: shareOfTolerance(reml, input.tolerance),
    },
    distinctCategories: { anova: distinctCategories(truncated), reml: distinctCategories(reml) },
  };
}

/** A trial that is not balanced, or too small: REML alone, as far as it goes. */
function withoutTable(input: CrossedTrialInput, why: string): CrossedTrial {
  const cells = new Set(
    input.part.map((label, i) => JSON.stringify([String(label), String(input.operator[i])])),
  );
  const enough = new Set(input.part.map(String)).size > 1 && new Set(input.operator.map(String)).size > 1;
  const reml = enough ? remlSide(input, cells.size < input.value.length) : null;
  return {
    table: null,
    components: { anova: null, truncated: null, reml: reml?.variances ?? null },
    intervals: { satterthwaite: null, modifiedLargeSample: null, reml: reml?.limits ?? null },
    shareOfTolerance: { anova: null, reml: shareOfTolerance(reml?.variances ?? null, input.tolerance) },
    distinctCategories: { anova: null, reml: distinctCategories(reml?.variances ?? null) },
    interaction: { kept: true, p: null, rule: RULE, pooled: null },
    notes: [],
    why,
  };
}
