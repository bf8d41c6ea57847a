import type { ShopAssessment } from '@/lib/assess/shop-assessment';
import type {
  GaugeFigures,
  HeightVerdict,
  MeanEstimate,
  NextCheck,
  Rate,
  RoundVerdict,
  SdEstimate,
  TechnicianFigures,
} from '@/lib/assess/types';
import type {
  BatchReport,
  ReportedCheck,
  ReportedGauge,
  ReportedHeight,
  ReportedMean,
  ReportedRate,
  ReportedRound,
  ReportedSd,
  ReportedTechnician,
} from './contract';

/** The assessment of a shop in the words of the contract. Numbers keep all their digits. */
export function batchReport(shop: ShopAssessment): BatchReport {
  return {
    technicians: shop.technicians.map(technician),
    gauges: shop.gauges.map(gauge),
    heights: shop.rounds.flatMap(heights),
    rounds: shop.rounds.map(round),
    first_time_right: rate(shop.firstTimeRight),
  };
}

export function technician(figures: TechnicianFigures): ReportedTechnician {
  const { repeatability, setting, bias, firstTimeRight } = figures;
  return {
    technician: figures.technician,
    readings: figures.readings,
    setups: figures.setups,
    jobs: figures.jobs,
    repeatability: { ...sd(repeatability), df: repeatability.df },
    setup: sd(setting),
    bias: mean(bias),
    first_time_right: {
      ...rate(firstTimeRight),
      expected: firstTimeRight.expected,
      shrunk: firstTimeRight.shrunk,
    },
    habits: figures.habits.map(({ habit, strength, evidence, setups }) => ({
      habit,
      strength,
      evidence,
      setups,
    })),
  };
}

export function gauge(figures: GaugeFigures): ReportedGauge {
  return { gauge: figures.gauge, readings: figures.readings, bias: mean(figures.bias) };
}

/** The heights of one round. */
export function heights(verdict: RoundVerdict): ReportedHeight[] {
  return verdict.heights.map((height) => reportedHeight(verdict, height));
}

// Field by field: what is made with a spread has a shape of its own each time, and takes longer to write.
const reportedHeight = ({ job, stage, attempt }: RoundVerdict, height: HeightVerdict): ReportedHeight => ({
  job,
  stage,
  attempt,
  setup: height.setup,
  gauge: height.gauge,
  technician: height.technician,
  point: height.point,
  side: height.side,
  station_mm: height.station,
  zero: height.zero,
  deviation_mm: height.deviation,
  p_neither: height.p.neither,
  p_gauge: height.p.gauge,
  p_body: height.p.body,
  p_both: height.p.both,
  misset_mm: height.misset,
  body_mm: height.body,
  signature: height.signature,
});

export function round(verdict: RoundVerdict): ReportedRound {
  const [best] = verdict.nextChecks;
  return {
    job: verdict.job,
    stage: verdict.stage,
    attempt: verdict.attempt,
    decidable: verdict.decidable,
    why: verdict.why,
    p_zero_misset: verdict.pZeroMisset,
    next_check: best === undefined ? null : check(best),
  };
}

function check({ action, setup, other, point, gainBits }: NextCheck): ReportedCheck {
  return {
    action,
    setup,
    gain_bits: gainBits,
    ...(point === null ? {} : { point }),
    ...(other === null ? {} : { other }),
  };
}

export function rate({ jobs, right, rate: proportion, low, high, why }: Rate): ReportedRate {
  return { jobs, right, rate: proportion, low, high, ...because(why) };
}

function sd({ sd: value, low, high, why }: SdEstimate): ReportedSd {
  return { sd_mm: value, low_mm: low, high_mm: high, ...because(why) };
}

function mean({ mean: value, low, high, why }: MeanEstimate): ReportedMean {
  return { mean_mm: value, low_mm: low, high_mm: high, ...because(why) };
}

const because = (why: string | null) => (why === null ? {} : { why });
