import type { Learned } from '@/lib/assess/cause/learned';
import { gaugeOf, handOf } from '@/lib/assess/cause/model';
import { missetSd, type BodyPrior } from '@/lib/assess/measuring-risk';
import { USUAL_MINUTES, type Minutes, type WorkingShop } from './types';

/** What is counted of the shop's work: additive over jobs. */
export interface ShopUsage {
  /** First measurings after a repair by who began them; readings by gauge. */
  jobs: Record<string, number>;
  readings: Record<string, number>;
  /** An ordinary job, as the shop's sheets have it. */
  stations: WorkingShop['stations'];
  lengths: WorkingShop['lengths'];
  readingsPerSetup: number;
  minutes?: Minutes;
}

/** Setups that the shop's rate lends to a technician's own mis-set rate in learning. */
const LENT_SETUPS = 20;

/** The shop's learned variances and rates with their standard errors, and its ordinary job. */
export function workingShop(learned: Learned, prior: BodyPrior, usage: ShopUsage): WorkingShop {
  const hands = Object.entries(usage.jobs)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([technician, share]) => {
      const { reading, setting, settingLogSe, bias, missetRate, setups } = handOf(learned, technician);
      const missetRateSe = Math.sqrt((missetRate * (1 - missetRate)) / (setups + LENT_SETUPS));
      return { technician, share, reading, setting, settingLogSe, bias, missetRate, missetRateSe };
    });
  const gauges = Object.entries(usage.readings)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([gauge, share]) => {
      const { bias, biasSe } = gaugeOf(learned, gauge);
      return { gauge, share, bias, biasSe };
    });
  const settings = hands.reduce(
    (sum, { share, setting, reading }) => sum + share * (setting ** 2 + reading ** 2),
    0,
  );
  const noise =
    settings /
    Math.max(
      1,
      hands.reduce((sum, { share }) => sum + share, 0),
    );
  return {
    hands,
    gauges,
    common: learned.common,
    missetSd: missetSd(learned),
    lengthScatter: learned.lengths.scatter,
    body: { ...prior, ...bodyErrors(prior, noise) },
    stations: usage.stations,
    lengths: usage.lengths,
    readings: usage.readingsPerSetup,
    minutes: usage.minutes ?? USUAL_MINUTES,
  };
}

/** The scatter is what is left of the variance of deviations when the error's is taken off, so its error grows with that. */
function bodyErrors({ scatter, offShare, dimensions }: BodyPrior, noise: number) {
  const n = Math.max(1, dimensions);
  const square = scatter ** 2;
  return {
    scatterLogSe: Math.min(1, (Math.sqrt(2 / n) * (square + noise)) / (2 * square)),
    offShareSe: Math.sqrt((offShare * (1 - offShare)) / n),
  };
}
