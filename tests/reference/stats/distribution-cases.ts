import data from '../data/distributions.json';

/** JSON loses tuple types; the shape is restored here once. */
export const distributionCases = data.cases as unknown as {
  quantile: string;
  args: [number, number?, number?];
  value: number;
}[];
