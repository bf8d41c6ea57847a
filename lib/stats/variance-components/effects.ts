import { at, codeAt } from '@/lib/stats/linear-algebra/element';
import { ratiosOf } from './criterion';
import type { Equations } from './equations';
import { selectInverse } from './selected-inverse';
import { solve } from './solution';
import { leverages } from './traces';

/** Effects by level with their standard errors, on the model's scale. */
export interface Effects {
  value: Float64Array;
  se: Float64Array;
}

export interface SolvedEffects {
  intercept: { estimate: number; se: number };
  /** By component. */
  random: Effects[];
  /** By name; without the base level. */
  fixed: Map<string, Effects>;
}

/**
 * Fixed effects and best linear unbiased predictions at given variances.
 *
 * Standard errors of predictions are those of prediction error, √var(û − u), in which the uncertainty of the mean
 * is counted; they are larger than the conditional standard deviations that take the mean for known.
 * Source: Henderson (1975), Biometrics 31, 423–447; Robinson (1991), Statistical Science 6, 15–32.
 */
export function solveEffects(equations: Equations, variances: Float64Array): SolvedEffects {
  const { model, inverseDiagonal } = equations;
  const residual = at(variances, model.components);
  const ratios = ratiosOf(variances);
  const { v, weighted } = solve(equations, ratios);
  selectInverse(equations);
  const intercept = model.columns - 1;
  const random: Effects[] = Array.from(ratios, () => ({
    value: new Float64Array(0),
    se: new Float64Array(0),
  }));
  const fixed = new Map<string, Effects>();
  for (const { name, component, first, width } of model.factors) {
    const scale = component < 0 ? 1 : Math.sqrt(at(ratios, component));
    const effects = {
      value: v.slice(first, first + width).map((value) => value * scale),
      se: inverseDiagonal.slice(first, first + width).map((d) => scale * Math.sqrt(residual * d)),
    };
    if (component < 0) fixed.set(name, effects);
    else random[component] = effects;
  }
  if (model.cellComponent >= 0) {
    const ratio = at(ratios, model.cellComponent);
    const h = leverages(equations);
    const effects = { value: new Float64Array(model.cells), se: new Float64Array(model.cells) };
    for (let s = 0; s < model.cells; s++) {
      const cell = codeAt(model.order, s);
      const w = at(equations.weight, s);
      effects.value[cell] = at(weighted, s) * ratio;
      effects.se[cell] = Math.sqrt(Math.max(0, residual * ratio * (1 - ratio * w * (1 - w * at(h, s)))));
    }
    random[model.cellComponent] = effects;
  }
  return {
    intercept: { estimate: at(v, intercept), se: Math.sqrt(residual * at(inverseDiagonal, intercept)) },
    random,
    fixed,
  };
}
