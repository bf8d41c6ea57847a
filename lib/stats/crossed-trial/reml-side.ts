import { fitVarianceComponents, type SdWithLimits } from '@/lib/stats/variance-components';
import { withSums } from './gauge-figures';
import { LINES, type CrossedTrialInput, type Line, type VarianceInterval, type Variances } from './types';

export interface RemlSide {
  variances: Variances;
  limits: Record<Line, VarianceInterval>;
}

/** REML of the same trial, balanced or not; `interaction` leaves part:operator in the model. */
export function remlSide(
  { part, operator, value, level = 0.95 }: CrossedTrialInput,
  interaction: boolean,
): RemlSide {
  const both = part.map((label, i) => JSON.stringify([String(label), String(operator[i])]));
  const fit = fitVarianceComponents({
    values: value,
    random: { part, operator, ...(interaction ? { 'part:operator': both } : {}) },
    level,
  });
  const of = (line: Line): SdWithLimits | undefined =>
    line === 'repeat' ? fit.residual : fit.components.find(({ name }) => name === line);
  const square = (sd: number | null | undefined) => (sd === null || sd === undefined ? null : sd ** 2);
  const lines = Object.fromEntries(LINES.map((line) => [line, square(of(line)?.sd)])) as Record<
    Line,
    number | null
  >;
  return {
    variances: withSums(lines),
    limits: Object.fromEntries(
      LINES.map((line) => [line, { low: square(of(line)?.low), high: square(of(line)?.high) }]),
    ) as Record<Line, VarianceInterval>,
  };
}
