import type { Learned } from './cause/learned';
import type { MeasuredSums } from './measured';
import { rateByTechnician } from './right-first-time';
import type { GaugeFigures, MeanEstimate, SdEstimate, TechnicianFigures, TechnicianRate } from './types';

/** 97.5 % of the standard normal distribution. */
const Z = 1.959963984540054;

/**
 * The standard error of a bias takes slips, damage and sizes for known, which understates it a little: on eight
 * simulated shops of 250 jobs the errors were 1.05 standard errors where they should be one.
 */
const Z_BIAS = 1.05 * Z;

/** The figures of the shop as a whole, to set one technician beside. */
export interface ShopBand {
  repeatability: SdEstimate;
  setting: SdEstimate;
}

/** @param rates of the same jobs, where they are known already */
export function technicianFigures(
  measured: MeasuredSums,
  learned: Learned,
  rates = technicianRates(measured),
): TechnicianFigures[] {
  const hands = measured.hands();
  return hands.flatMap(({ technician, readings, setups, jobs }) => {
    const rate = rates.get(technician);
    if (rate === undefined) return [];
    return [
      {
        technician,
        readings,
        setups,
        jobs,
        repeatability: measured.repeatability(technician),
        setting: settingOf(learned, technician),
        bias: technicianBias(learned, technician),
        firstTimeRight: rate,
        habits: [],
      },
    ];
  });
}

export const technicianRates = (measured: MeasuredSums): Map<string, TechnicianRate> =>
  rateByTechnician(
    measured.outcomes,
    measured.hands().map(({ technician }) => technician),
  );

/** Ordinary scatter of one hanger's setting, mis-sets set aside: the learned sd with its interval on the log scale. */
export function settingOf(learned: Learned, technician: string): SdEstimate {
  const hand = learned.technicians[technician];
  if (!hand || hand.setups === 0) return nothing('This technician has hung no gauge for heights.');
  const factor = Math.exp(Z * hand.settingLogSe);
  return { sd: hand.setting, df: null, low: hand.setting / factor, high: hand.setting * factor, why: null };
}

/** Systematic part of a technician's heights against the mean of all technicians. */
export function technicianBias(learned: Learned, technician: string): MeanEstimate {
  const hands = Object.values(learned.technicians);
  const hand = learned.technicians[technician];
  if (!hand || hand.setups === 0) return missing('This technician has hung no gauge for heights.');
  if (hands.length < 2) return missing('There is no other technician to compare with.');
  const mean = hand.bias - hands.reduce((sum, other) => sum + other.bias, 0) / hands.length;
  return {
    mean,
    low: mean - Z_BIAS * hand.biasContrastSe,
    high: mean + Z_BIAS * hand.biasContrastSe,
    why: null,
  };
}

export function gaugeFigures(measured: MeasuredSums, learned: Learned): GaugeFigures[] {
  return measured.gauges().map(({ gauge, readings }) => ({
    gauge,
    readings,
    bias: gaugeBias(learned, gauge),
  }));
}

export function gaugeBias(learned: Learned, gauge: string): MeanEstimate {
  const state = learned.gauges[gauge];
  if (!state) return missing('This gauge has measured no height; its bias shows only there.');
  return {
    mean: state.bias,
    low: state.bias - Z_BIAS * state.biasSe,
    high: state.bias + Z_BIAS * state.biasSe,
    why: null,
  };
}

export function shopBand(measured: MeasuredSums, learned: Learned): ShopBand {
  const { setting, settingLogSe } = learned.newTechnician;
  const hands = Object.values(learned.technicians).filter((hand) => hand.setups > 0).length;
  const factor = Math.exp((Z * settingLogSe) / Math.sqrt(Math.max(1, hands)));
  return {
    repeatability: measured.repeatability(),
    setting:
      hands === 0
        ? nothing('No gauge was hung for heights.')
        : { sd: setting, df: null, low: setting / factor, high: setting * factor, why: null },
  };
}

const nothing = (why: string): SdEstimate => ({ sd: null, df: null, low: null, high: null, why });
const missing = (why: string): MeanEstimate => ({ mean: null, low: null, high: null, why });
