import { describe, it } from 'vitest';
import { logisticRegression } from '@/lib/stats';
import { expectRelative } from './closeness';

/**
 * Bliss (1935), Annals of Applied Biology 22, 134–167: beetles killed at eight doses of a gas (reprinted in
 * Dobson, An Introduction to Generalized Linear Models, 7.3.1). `g` is made up here.
 */
const DOSE = [1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.861, 1.8839];
const TRIALS = [59, 60, 62, 56, 63, 59, 62, 60];
const KILLED = [6, 13, 18, 28, 52, 53, 61, 60];
const G = [0, 1, 0, 1, 1, 0, 0, 1];

describe('logisticRegression against R glm(cbind(x, n - x) ~ …, binomial) and confint.default(level = 0.9)', () => {
  it('dose alone', () => {
    const fit = logisticRegression({
      successes: KILLED,
      trials: TRIALS,
      covariates: { dose: DOSE },
      ridge: 0,
      level: 0.9,
    });
    expectRelative(fit.intercept?.estimate, -60.71745456163484, 1e-10);
    expectRelative(fit.intercept?.se, 5.180711463340767, 1e-8);
    expectRelative(fit.coefficients?.[0]?.estimate, 34.27032573414667, 1e-10);
    expectRelative(fit.coefficients?.[0]?.se, 2.91214007063571, 1e-8);
    expectRelative(fit.coefficients?.[0]?.low, 29.4802815767708, 1e-8);
    expectRelative(fit.coefficients?.[0]?.high, 39.06036989152253, 1e-8);
    expectRelative(fit.fitted?.[0], 0.05860102551591619, 1e-10);
    expectRelative(fit.fitted?.[7], 0.9790493440766996, 1e-10);
  });

  it('dose and a second covariate', () => {
    const fit = logisticRegression({
      successes: KILLED,
      trials: TRIALS,
      covariates: { dose: DOSE, g: G },
      ridge: 0,
    });
    expectRelative(fit.intercept?.estimate, -60.69309315019638, 1e-10);
    expectRelative(fit.coefficients?.[0]?.estimate, 34.24723841387475, 1e-10);
    expectRelative(fit.coefficients?.[1]?.estimate, 0.02951910905815999, 1e-8);
    expectRelative(fit.coefficients?.[1]?.se, 0.2644480422428764, 1e-8);
  });

  it('with a ridge: Newton’s method in R on the same penalised likelihood', () => {
    for (const [ridge, estimates, errors] of [
      [
        0.16,
        [-60.3213757414807, 34.0378701041898, 0.0306762545262127],
        [5.13347616980732, 2.88959674748874, 0.263287999665543],
      ],
      [
        2,
        [-56.5896203903233, 31.9367485995044, 0.0407548546822388],
        [4.69564256684207, 2.64143090125161, 0.251670669115623],
      ],
    ] as const) {
      const fit = logisticRegression({
        successes: KILLED,
        trials: TRIALS,
        covariates: { dose: DOSE, g: G },
        ridge,
      });
      [fit.intercept, ...(fit.coefficients ?? [])].forEach((coefficient, j) => {
        expectRelative(coefficient?.estimate, estimates[j] ?? NaN, 1e-10);
        expectRelative(coefficient?.se, errors[j] ?? NaN, 1e-10);
      });
    }
  });
});
