import type { Quantity } from '@/lib/measure';

/** One error that several recorded dimensions share, in units of its own standard deviation. */
export interface SharedError {
  /** Which error: the same key in two dimensions of a job is the same error. */
  key: string;
  /** What one standard deviation of it adds to this recorded deviation, mm, with its sign. */
  mm: number;
}

/** A way in which a setting may be wrong beyond ordinary scatter. */
export interface Misset {
  chance: number;
  /** Sd of what it adds, mm. */
  sd: number;
}

/** A recorded dimension of the first measuring after a repair, with what its measuring error is made of. */
export interface FinalDimension {
  /** `height K L`, for tables. */
  name: string;
  quantity: Quantity;
  technician: string;
  gauge: string;
  /** Mean deviation as recorded, mm, and the half width of its tolerance. */
  deviation: number;
  tolerance: number;
  within: boolean;
  /** Known part of the error (biases of technician and gauge), mm: recorded = true + known + errors. */
  known: number;
  /** Standard deviation of the error that this dimension has to itself, mm. */
  own: number;
  shared: SharedError[];
  /**
   * The bodies at both zero stations of its side, with their weights: a true deviation is counted from the datum that they
   * carry, so it holds weight × what is left of each after the repair.
   */
  datum: { key: string; weight: number }[];
  /** Kinds of mis-set that this setting may be, each with its chance and the sd of what it adds, mm. */
  missets: readonly Misset[];
}

export interface FinalJob {
  job: string;
  right: boolean;
  /** True where a second measuring after the repair shows that it was worked on again. */
  again: boolean;
  dimensions: FinalDimension[];
}

/** Where the bodies truly are after a repair, learned from the shop's own final deviations: a mixture of two normals. */
export interface BodyPrior {
  /** Sd of a point that was put right, mm: in height, and in length or from the centerline. */
  scatter: number;
  flatScatter: number;
  /** Share of points that were not, and the sd of those, mm. */
  offShare: number;
  offScatter: number;
  /** Final dimensions behind it. */
  dimensions: number;
  /** Why these are not learned but where a shop without history starts. */
  why: string | null;
}

export interface JobRisk {
  job: string;
  calledRight: boolean;
  again: boolean;
  /** P(every dimension is truly within its tolerance | the readings of this job). */
  trulyRight: number;
  /** P(truly within) of each dimension, in the order of the job. */
  dimensions: { name: string; within: boolean; trulyWithin: number }[];
}

/** An expected number with 95 % limits of the count; null where there is nothing to expect it of. */
export interface Expected {
  expected: number | null;
  low: number | null;
  high: number | null;
}

export interface ExpectedCount extends Expected {
  /** Jobs that it is out of. */
  of: number;
}

export interface ShopRisk {
  /** Jobs called right that are expected not to be. */
  wronglyRight: ExpectedCount;
  /** Jobs called not right that were right; and among those the ones that were worked on again. */
  wronglyNotRight: ExpectedCount;
  workedOnAgain: ExpectedCount;
  /** The true rate of jobs right the first time, as expected, beside the rate as called. */
  trueRate: Expected;
  calledRate: number | null;
  jobs: JobRisk[];
  prior: BodyPrior;
  /** One sentence that says it. */
  sentence: string;
  method: string;
}
