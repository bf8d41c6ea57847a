/** A value and how much it weighs: its variance is one unknown σ² over its weight. */
export interface Weighted {
  value: number;
  weight: number;
}

/** Values taken together: their weight (their number, where each weighs 1), mean, and weighted squares about it. */
export interface WeightedSum {
  weight: number;
  mean: number;
  ss: number;
}

export const NO_WEIGHT: WeightedSum = { weight: 0, mean: 0, ss: 0 };

/** A value more. Source: West (1979), Comm. ACM 22, 532–535. */
export function addWeighted(sum: WeightedSum, { value, weight: own }: Weighted): WeightedSum {
  const weight = sum.weight + own;
  const apart = value - sum.mean;
  const mean = sum.mean + (apart * own) / weight;
  return { weight, mean, ss: sum.ss + own * apart * (value - mean) };
}
