export type Label = string | number;

export interface VarianceComponentsInput {
  /** The readings, in any unit. */
  values: readonly number[];
  /** Random factors: a label for every reading. A level nested in another factor carries its parent in its label. */
  random: Readonly<Record<string, readonly Label[]>>;
  /** Fixed factors, coded by treatment contrasts against the first level in sorted order. */
  fixed?: Readonly<Record<string, readonly Label[]>>;
  /** 'profile' (the default), or 'none' to leave the limits null and save their time. */
  intervals?: 'profile' | 'none';
  /** Level of the intervals, 0.95 unless given. */
  level?: number;
}

/** A standard deviation in the unit of the readings; null fields, with the reason in `why`, where there is none. */
export interface SdWithLimits {
  sd: number | null;
  low: number | null;
  high: number | null;
  why: string | null;
}

export interface Component extends SdWithLimits {
  name: string;
}

export interface Estimate {
  estimate: number | null;
  se: number | null;
}

/** What one level of a factor adds, with its standard error. */
export interface LevelEffect {
  level: Label;
  value: number | null;
  se: number | null;
}

export interface VarianceComponents {
  /** The mean, at the base levels of the fixed factors if there are any. */
  intercept: Estimate;
  /** In the order of `random`. */
  components: Component[];
  residual: SdWithLimits;
  /** −2 × the restricted log-likelihood on lme4's scale (REMLcrit); null where there is none. */
  criterion: number | null;
  /** Best linear unbiased predictions of the levels of each random factor. */
  effects: Record<string, LevelEffect[]>;
  /** Contrasts of each fixed factor against its base level, which has 0. */
  fixed: Record<string, LevelEffect[]>;
  why: string | null;
}
