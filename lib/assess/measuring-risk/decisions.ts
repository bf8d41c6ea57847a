import { decisionRisks } from '@/lib/stats';
import { findRoot } from '@/lib/stats/numeric/root';
import { settingsOf } from './missets';
import type { BodyPrior, FinalDimension } from './types';

/** What deciding one dimension by one recorded deviation risks. */
export interface DimensionRisks {
  /** P(accepted and truly out), P(rejected and truly within), in all dimensions measured. */
  consumer: number;
  producer: number;
  accepted: number;
  /** P(truly out | accepted) and P(truly within | rejected); null where nothing is accepted, or rejected. */
  outGivenAccepted: number | null;
  withinGivenRejected: number | null;
}

export interface DimensionQuestion {
  /** Half width of the tolerance and standard uncertainty of the recorded deviation, mm. */
  tolerance: number;
  uncertainty: number;
  missets?: FinalDimension['missets'];
  prior: BodyPrior;
  /** Variance of a true deviation over that of a point by itself: 1 + the squares of its levers. Default 1. */
  spread?: number;
  /** How far inside the tolerance the deviation must lie to be accepted, mm. Default 0. */
  guard?: number;
}

/**
 * Consumer's and producer's risk of one dimension, over the mixture of bodies put right and not, and of settings ordinary
 * and mis-set. Source: JCGM 106:2012, 9.5, summed over the mixture.
 */
export function dimensionRisks(question: DimensionQuestion): DimensionRisks {
  const { tolerance, uncertainty, prior, guard = 0, missets = [], spread = 1 } = question;
  let [consumer, producer, accepted, rejected] = [0, 0, 0, 0];
  for (const [share, processSd] of [
    [1 - prior.offShare, prior.scatter * Math.sqrt(spread)],
    [prior.offShare, prior.offScatter],
  ] as const) {
    for (const { chance, variance } of settingsOf(missets)) {
      const weight = share * chance;
      const noise = Math.sqrt(uncertainty ** 2 + variance);
      if (weight === 0) continue;
      const part = decisionRisks({
        processMean: 0,
        processSd,
        uncertainty: noise,
        guard,
        lower: -tolerance,
        upper: tolerance,
      });
      consumer += weight * part.consumer;
      producer += weight * part.producer;
      accepted += weight * part.accepted;
      rejected += weight * (1 - part.accepted);
    }
  }
  return {
    consumer,
    producer,
    accepted,
    outGivenAccepted: accepted > 0 ? consumer / accepted : null,
    withinGivenRejected: rejected > 1e-15 ? producer / rejected : null,
  };
}

export interface GuardBand {
  /** How far inside the tolerance a deviation must lie, mm; 0 where the risk is met without; null where it cannot be. */
  guard: number | null;
  /** The risks with it, and without. */
  risks: DimensionRisks | null;
  without: DimensionRisks;
  why: string | null;
}

/**
 * The smallest guard band with which of the accepted dimensions no more than the share `wanted` is truly out. What it
 * costs stands beside it: the producer's risk grows. Source: JCGM 106:2012, 8.3 and 9.5.
 */
export function guardBand(question: Omit<DimensionQuestion, 'guard'>, wanted: number): GuardBand {
  if (!(wanted > 0 && wanted < 1)) {
    throw new RangeError(`The risk that is wanted must lie between 0 and 1; it is ${wanted}.`);
  }
  const at = (guard: number) => dimensionRisks({ ...question, guard });
  const without = at(0);
  const over = (risks: DimensionRisks) => (risks.outGivenAccepted ?? 0) - wanted;
  if (over(without) <= 0) return { guard: 0, risks: without, without, why: null };
  const most = question.tolerance * 0.999;
  if (over(at(most)) > 0) {
    const why =
      'Even a deviation of nothing leaves more risk than that: hang again or let another technician hang, ' +
      'since a tighter limit cannot make up for the uncertainty.';
    return { guard: null, risks: null, without, why };
  }
  // Found to a hundredth of a millimetre: no gauge shows more.
  const guard = Math.ceil(findRoot((g) => over(at(g)), 0, most) * 100 - 1e-9) / 100;
  return { guard, risks: at(guard), without, why: null };
}

export interface HandRisks {
  technician: string;
  gauge: string;
  dimensions: number;
  /** Root mean square of the standard uncertainties of its final dimensions, mm. */
  uncertainty: number;
  tolerance: number;
  risks: DimensionRisks;
  guard: GuardBand;
}

/**
 * The risks of every technician with every gauge, at the tolerance that most of their final dimensions have. In the order
 * of the names. `wanted` is the share of accepted dimensions that may be out.
 */
export function handRisks(
  dimensions: readonly FinalDimension[],
  prior: BodyPrior,
  wanted = 0.02,
): HandRisks[] {
  const groups = new Map<string, FinalDimension[]>();
  for (const dimension of dimensions) {
    const key = JSON.stringify([dimension.technician, dimension.gauge]);
    groups.set(key, [...(groups.get(key) ?? []), dimension]);
  }
  return [...groups.keys()].sort().flatMap((key): HandRisks[] => {
    const own = groups.get(key) ?? [];
    const [first] = own;
    if (!first) return [];
    const mean = (of: (dimension: FinalDimension) => number) =>
      own.reduce((sum, dimension) => sum + of(dimension), 0) / own.length;
    const uncertainty = Math.sqrt(mean(variance));
    const kinds = Math.max(...own.map(({ missets }) => missets.length));
    const missets = Array.from({ length: kinds }, (_, kind) => ({
      chance: mean((dimension) => dimension.missets[kind]?.chance ?? 0),
      sd: Math.max(...own.map((dimension) => dimension.missets[kind]?.sd ?? 0)),
    }));
    const tolerance = commonest(own.map((dimension) => dimension.tolerance));
    const spread = mean(({ datum }) => 1 + datum.reduce((sum, { weight }) => sum + weight * weight, 0));
    const question = { tolerance, uncertainty, missets, prior, spread };
    return [
      {
        technician: first.technician,
        gauge: first.gauge,
        dimensions: own.length,
        uncertainty,
        tolerance,
        risks: dimensionRisks(question),
        guard: guardBand(question, wanted),
      },
    ];
  });
}

const variance = ({ own, shared }: FinalDimension): number =>
  own ** 2 + shared.reduce((sum, { mm }) => sum + mm * mm, 0);

function commonest(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const [[most] = [0]] = [...counts].sort(([a, n], [b, m]) => m - n || a - b);
  return most;
}
