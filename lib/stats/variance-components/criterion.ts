import { at } from '@/lib/stats/linear-algebra/element';
import { scoreParts } from './average-information';
import type { Equations } from './equations';
import { solve, type Solution } from './solution';
import { traces } from './traces';

const LN_2PI = Math.log(2 * Math.PI);

/** Value, gradient and average information of the REML criterion at some variances. */
export interface Evaluation {
  value: number;
  gradient: Float64Array;
  /** A positive semidefinite stand-in for the second derivatives. */
  information: Float64Array[];
}

/**
 * −2 × the restricted log-likelihood, on the scale of lme4's REMLcrit:
 * (N − p) ln 2π + ln |V| + ln |X' V⁻¹ X| + y' P y.
 *
 * `variances` are those of the components in order, then the residual's (above 0).
 */
export function criterion(equations: Equations, variances: Float64Array): number {
  return valueOf(equations, variances, solve(equations, ratiosOf(variances)));
}

/** The criterion with its derivatives with respect to the variances; a variance of 0 is allowed. */
export function evaluate(equations: Equations, variances: Float64Array): Evaluation {
  const { model } = equations;
  const q = model.components;
  const ratios = ratiosOf(variances);
  const residual = at(variances, q);
  const solution = solve(equations, ratios);
  const value = valueOf(equations, variances, solution);
  const { squares, information } = scoreParts(equations, solution);
  const trace = traces(equations, ratios);
  const gradient = new Float64Array(q + 1);
  let left = model.readings - model.fixedColumns;
  for (let i = 0; i < q; i++) {
    gradient[i] = (at(trace, i) - at(squares, i) / residual) / residual;
    left -= at(ratios, i) * at(trace, i);
  }
  gradient[q] = (left - at(squares, q) / residual) / residual;
  for (const line of information) for (let j = 0; j <= q; j++) line[j] = at(line, j) / residual ** 3;
  return { value, gradient, information };
}

export function ratiosOf(variances: Float64Array): Float64Array {
  const residual = at(variances, variances.length - 1);
  return variances.slice(0, -1).map((variance) => variance / residual);
}

function valueOf({ model }: Equations, variances: Float64Array, solution: Solution): number {
  const residual = at(variances, model.components);
  const df = model.readings - model.fixedColumns;
  return df * (LN_2PI + Math.log(residual)) + solution.logDeterminant + solution.quadratic / residual;
}
