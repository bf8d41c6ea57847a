export interface LogisticData {
  /** Successes of each row, 0 or 1, or a count where `trials` is given. */
  successes: readonly number[];
  /** Trials of each row, default 1. A row of 0 trials teaches nothing but gets its fitted chance. */
  trials?: readonly number[];
  /** One value a row for each named covariate; none: the intercept alone. */
  covariates: Readonly<Record<string, readonly number[]>>;
  /** Weight of the pull of the coefficients to zero; default 0.16, 0 for plain maximum likelihood. */
  ridge?: number;
  level?: number;
}

/** A coefficient on the log-odds scale, in the covariate's own unit, with its Wald interval. */
export interface LogisticCoefficient {
  name: string;
  estimate: number;
  se: number;
  low: number;
  high: number;
}

export interface LogisticFit {
  intercept: LogisticCoefficient | null;
  coefficients: LogisticCoefficient[] | null;
  /** Chance of success of each row; null where there is no fit. */
  fitted: number[] | null;
  /** Of the outcomes, without binomial coefficients and without the pull. */
  logLikelihood: number | null;
  iterations: number;
  why: string | null;
}
