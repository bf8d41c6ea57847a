import { ewma, ewmaLimitFor, individuals } from '@/lib/stats';
import type { GaugeVerdict, Verification } from './types';

/** With fewer verifications the limits of a chart are guesses. */
const LEAST = 6;

const LAMBDA = 0.2;
let limit: number | null = null;
/** Found once: it is the same for every gauge. */
const ewmaLimit = (): number => (limit ??= ewmaLimitFor(LAMBDA, 370));

/** Individuals (3 sds of the moving range) and EWMA (λ = 0.2, one false alarm in 370) of the errors. */
export function chartOf(verifications: readonly Verification[]): GaugeVerdict['chart'] {
  const errors = verifications.map(({ error }) => error);
  const at = verifications.map((one) => one.at);
  const { center, sd, low, high, alarms } = individuals(errors);
  if (errors.length < LEAST || center === null || sd === null || sd === 0) {
    const why =
      sd === 0
        ? 'All errors are equal: the scatter is finer than the gauge shows.'
        : `Limits take ${LEAST} verifications since the last adjustment; there are ${errors.length}.`;
    return { at, errors, center, low: null, high: null, ewma: null, alarms: [], why };
  }
  const smooth = ewma(errors, { center, sd, lambda: LAMBDA, L: ewmaLimit(), limits: 'exact' });
  const beyond = [...new Set([...alarms, ...smooth.alarms])].sort((a, b) => a - b);
  return {
    at,
    errors,
    center,
    low,
    high,
    ewma: { statistic: smooth.statistic, low: smooth.low, high: smooth.high },
    alarms: beyond.flatMap((i) => at[i] ?? []),
    why: null,
  };
}
