import { chiSquareQuantile } from '@/lib/stats/distributions';
import { at } from '@/lib/stats/linear-algebra/element';
import type { MixedModel } from './mixed-model';
import { fitModel, isSmall, objectiveOf, RESIDUAL_FLOOR } from './fit-model';
import { minimise, type Minimum, type Objective } from './minimise';
import { LowerMinimum, profileLimits, type VarianceLimits } from './profile-interval';
import type { Equations } from './equations';

export interface CellsFit {
  equations: Equations;
  /** Variances on the model's scale: components, then residual; exactly 0 on the boundary. */
  variances: Float64Array;
  /** The criterion on the model's scale; null where it has no lower bound (the residual variance goes to 0). */
  criterion: number | null;
  /** One for each variance, or null where none were asked for. */
  limits: (VarianceLimits | null)[];
  /** The residual variance fell to 0. */
  exact: boolean;
}

/** Fits a model and, for a level, the profile limits of every variance. */
export function fitCells(model: MixedModel, level: number | null): CellsFit {
  const objective = objectiveOf(model);
  let fit = fitModel(model, objective);
  let limits: (VarianceLimits | null)[] = Array.from(fit.x, () => null);
  if (level !== null) ({ fit, limits } = profileAll(model, objective, fit, chiSquareQuantile(level, 1)));
  const q = model.components;
  const exact = at(fit.x, q) <= 2 * RESIDUAL_FLOOR;
  // Halving the residual variance must lower the criterion by a whole degree of freedom's share to be without end.
  const endless = exact && at(fit.gradient, q) * at(fit.x, q) > 0.5;
  return {
    equations: objective.equations,
    variances: fit.x,
    criterion: endless ? null : fit.value,
    limits,
    exact,
  };
}

/** A profile that finds a lower criterion than the fit sends the fit back to start from there. */
function profileAll(
  model: MixedModel,
  objective: Objective,
  first: Minimum,
  cut: number,
): { fit: Minimum; limits: VarianceLimits[] } {
  let fit = first;
  for (let again = 0; ; again++) {
    try {
      const limits = Array.from(fit.x, (_, j) => profileLimits(objective, fit, j, cut, isSmall(model)));
      return { fit, limits };
    } catch (error) {
      if (!(error instanceof LowerMinimum) || again >= 5) throw error;
      fit = minimise(objective, error.x);
    }
  }
}
