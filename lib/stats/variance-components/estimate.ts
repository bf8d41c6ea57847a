import { at, codeAt } from '@/lib/stats/linear-algebra/element';
import { buildModel, type CodedFactor } from './build-model';
import { refuseConfounded, refuseDependent } from './confounding';
import { solveEffects, type Effects } from './effects';
import { fitCells, type CellsFit } from './fit-cells';
import type { VarianceLimits } from './profile-interval';
import type { Component, Estimate, SdWithLimits } from './types';

/** A problem on cells, as both doors put it. */
export interface CellProblem {
  n: Float64Array;
  /** Cell means, less `origin`. */
  mean: Float64Array;
  origin: number;
  withinSs: number;
  readings: number;
  random: readonly CodedFactor[];
  fixed: readonly CodedFactor[];
  /** Level of the intervals; null for none. */
  level: number | null;
}

export interface CellEstimates {
  intercept: Estimate;
  components: Component[];
  residual: SdWithLimits;
  criterion: number | null;
  /** By name: one element a level; null where the component could not be estimated. */
  random: Map<string, Effects | null>;
  /** By name: one element a level, the base first. */
  fixed: Map<string, Effects | null>;
  why: string | null;
}

export function estimate(problem: CellProblem): CellEstimates {
  const { random, fixed, readings } = problem;
  const cells = problem.n.length;
  if (readings === 0) return nothing(problem, null, 'There are no readings.');
  const centre = weightedMean(problem);
  const kept = random.filter((factor) => factor.levels > 1);
  const split = fixed.filter((factor) => factor.levels > 1);
  const columns = 1 + split.reduce((sum, factor) => sum + factor.levels - 1, 0);
  const level = problem.origin + centre;
  if (readings <= columns) {
    const single =
      readings === 1 ? 'One reading shows no scatter.' : 'There are no more readings than fixed effects.';
    return nothing(problem, split.length === 0 ? level : null, single);
  }
  refuseConfounded(kept, split, problem.n, readings);
  const scale = Math.sqrt(totalSquares(problem, centre) / (readings - 1));
  if (scale === 0) return allEqual(problem, level);
  const cellComponent = kept.findIndex((factor) => factor.levels === cells);
  const model = buildModel({
    n: problem.n,
    mean: problem.mean.map((mean) => (mean - centre) / scale),
    withinSs: problem.withinSs / scale ** 2,
    readings,
    random: kept.map((factor, i) => (i === cellComponent ? null : factor)),
    cellComponent,
    fixed: split,
  });
  refuseDependent(
    model,
    kept.map((factor) => factor.name),
  );
  const fit = fitCells(model, problem.level);
  return onOriginalScale(problem, fit, kept, level, scale);
}

function onOriginalScale(
  problem: CellProblem,
  fit: CellsFit,
  kept: readonly CodedFactor[],
  level: number,
  scale: number,
): CellEstimates {
  const { model } = fit.equations;
  const solved = solveEffects(fit.equations, fit.variances);
  const scaled = ({ value, se }: Effects): Effects => ({
    value: value.map((x) => x * scale),
    se: se.map((x) => x * scale),
  });
  const random = new Map<string, Effects | null>();
  const components = problem.random.map((factor) => {
    const i = kept.indexOf(factor);
    const effects = solved.random[i];
    random.set(
      factor.name,
      effects === undefined ? null : scaled(i === model.cellComponent ? byLevel(effects, factor) : effects),
    );
    if (i < 0) return { name: factor.name, ...oneLevel(factor.name) };
    return { name: factor.name, ...sdWithLimits(at(fit.variances, i), fit.limits[i] ?? null, scale) };
  });
  const fixed = new Map(
    problem.fixed.map((factor) => {
      const effects = solved.fixed.get(factor.name);
      return [factor.name, effects === undefined ? null : scaled(withBase(effects))] as const;
    }),
  );
  const df = model.readings - model.fixedColumns;
  return {
    intercept: { estimate: level + solved.intercept.estimate * scale, se: solved.intercept.se * scale },
    components,
    residual: fit.exact
      ? { sd: 0, low: 0, high: null, why: EXACT }
      : sdWithLimits(at(fit.variances, model.components), fit.limits[model.components] ?? null, scale),
    criterion: fit.criterion === null ? null : fit.criterion + 2 * df * Math.log(scale),
    random,
    fixed,
    why: fit.criterion === null ? EXACT : null,
  };
}

const EXACT = 'The factors account for every reading exactly, so no scatter is left to estimate.';

function sdWithLimits(variance: number, limits: VarianceLimits | null, scale: number): SdWithLimits {
  const root = (value: number) => Math.sqrt(value) * scale;
  return {
    sd: root(variance),
    low: limits === null ? null : root(limits.low),
    high: limits === null || limits.high === null ? null : root(limits.high),
    why: null,
  };
}

const oneLevel = (name: string): SdWithLimits => ({
  sd: null,
  low: null,
  high: null,
  why: `"${name}" has one level, so a spread between levels cannot be seen.`,
});

/** The effects of the cells in the order of the factor's levels. */
function byLevel({ value, se }: Effects, factor: CodedFactor): Effects {
  const sorted = { value: new Float64Array(factor.levels), se: new Float64Array(factor.levels) };
  for (let s = 0; s < factor.codes.length; s++) {
    sorted.value[codeAt(factor.codes, s)] = at(value, s);
    sorted.se[codeAt(factor.codes, s)] = at(se, s);
  }
  return sorted;
}

const withBase = ({ value, se }: Effects): Effects => ({
  value: Float64Array.of(0, ...value),
  se: Float64Array.of(0, ...se),
});

function weightedMean({ n, mean, readings }: CellProblem): number {
  let sum = 0;
  for (let s = 0; s < n.length; s++) sum += at(n, s) * at(mean, s);
  return sum / readings;
}

function totalSquares({ n, mean, withinSs }: CellProblem, centre: number): number {
  let sum = withinSs;
  for (let s = 0; s < n.length; s++) sum += at(n, s) * (at(mean, s) - centre) ** 2;
  return sum;
}

function nothing(problem: CellProblem, level: number | null, why: string): CellEstimates {
  const none: SdWithLimits = { sd: null, low: null, high: null, why };
  return {
    intercept: { estimate: level, se: null },
    components: problem.random.map(({ name }) => ({ name, ...none })),
    residual: none,
    criterion: null,
    random: new Map(problem.random.map(({ name }) => [name, null])),
    fixed: new Map(problem.fixed.map(({ name }) => [name, null])),
    why,
  };
}

function allEqual(problem: CellProblem, level: number): CellEstimates {
  const why = 'All readings are equal: the scatter is finer than they show.';
  const zero: SdWithLimits = { sd: 0, low: 0, high: null, why };
  const zeros = (levels: number): Effects => ({
    value: new Float64Array(levels),
    se: new Float64Array(levels),
  });
  return {
    intercept: { estimate: level, se: 0 },
    components: problem.random.map(({ name, levels }) => ({ name, ...(levels > 1 ? zero : oneLevel(name)) })),
    residual: zero,
    criterion: null,
    random: new Map(problem.random.map(({ name, levels }) => [name, levels > 1 ? zeros(levels) : null])),
    fixed: new Map(problem.fixed.map(({ name, levels }) => [name, zeros(levels)])),
    why,
  };
}
