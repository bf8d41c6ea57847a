import { requireFinite, requireNotNegative } from '@/lib/stats/arguments';
import { normalBetween, normalCdf, normalDensity, normalUpper } from '@/lib/stats/distributions';
import { integratePanels } from '@/lib/stats/numeric/gauss-legendre';
import { toleranceLimits, type Tolerance } from './tolerance';

export interface DecisionQuestion extends Tolerance {
  /** Mean and standard deviation of the true values that come to be measured. */
  processMean: number;
  processSd: number;
  /** Standard uncertainty of a measured value. */
  uncertainty: number;
  /** How far inside the tolerance a measured value must lie to be accepted; negative: outside. Default 0. */
  guard?: number;
}

export interface DecisionRisks {
  /** P(accepted and outside the tolerance). */
  consumer: number;
  /** P(rejected and within the tolerance). */
  producer: number;
  /** P(within the tolerance) = accepted − consumer + producer. */
  conforming: number;
  accepted: number;
  /** P(outside | accepted) and P(within | rejected); null where nothing is accepted, or rejected. */
  nonconformingGivenAccepted: number | null;
  conformingGivenRejected: number | null;
}

/**
 * Joint risks of deciding by a measured value: true value η ~ N(processMean, processSd²), measured value
 * y | η ~ N(η, uncertainty²), accepted where lower + guard ≤ y ≤ upper − guard. All in one unit.
 *
 * Integrated over η by Gauss–Legendre panels no wider than half a process sd, cut finer about the limits of
 * acceptance; absolute error below 1e-12. An sd or uncertainty of 0 is the limit of a small one.
 * RangeError for negative sds, crossed limits, or numbers that are not finite.
 * Source: JCGM 106:2012, 9.5.
 */
export function decisionRisks(question: DecisionQuestion): DecisionRisks {
  const { processMean, processSd, uncertainty, guard = 0 } = question;
  requireFinite('The process mean', processMean);
  requireNotNegative('The process standard deviation', processSd);
  requireNotNegative('The standard uncertainty', uncertainty);
  requireFinite('The guard band', guard);
  const { lower, upper } = toleranceLimits(question);
  const from = lower + guard;
  const to = upper - guard;

  const process = (a: number, b: number) => between(processMean, processSd, a, b);
  const accepts = (eta: number) => between(eta, uncertainty, from, to);
  const rejects = (eta: number) => outside(eta, uncertainty, from, to);
  const conforming = process(lower, upper);
  const accepted = from > to ? 0 : between(processMean, Math.hypot(processSd, uncertainty), from, to);
  const rejected = from > to ? 1 : outside(processMean, Math.hypot(processSd, uncertainty), from, to);

  let consumer = 0;
  let producer = 0;
  if (from > to) producer = conforming;
  else if (processSd === 0) {
    const within = processMean >= lower && processMean <= upper;
    consumer = within ? 0 : accepts(processMean);
    producer = within ? rejects(processMean) : 0;
  } else if (uncertainty === 0) {
    consumer =
      Math.max(0, process(from, Math.min(lower, to))) + Math.max(0, process(Math.max(upper, from), to));
    producer =
      Math.max(0, process(lower, Math.min(from, upper))) + Math.max(0, process(Math.max(to, lower), upper));
  } else {
    const integral = (weight: (eta: number) => number, a: number, b: number) =>
      integratePanels(
        (eta) => (normalDensity((eta - processMean) / processSd) / processSd) * weight(eta),
        panelEdges(question, from, to, a, b),
      );
    // A quadrature rule's weights add up to 1 but for the last digit.
    consumer = Math.min(1, integral(accepts, -Infinity, lower) + integral(accepts, upper, Infinity));
    producer = Math.min(1, integral(rejects, lower, upper));
  }
  return {
    consumer,
    producer,
    conforming,
    accepted,
    nonconformingGivenAccepted: accepted > 0 ? consumer / accepted : null,
    conformingGivenRejected: rejected > 0 ? producer / rejected : null,
  };
}

/** P(a ≤ X ≤ b), X ~ N(mean, sd²); with sd = 0 the edges count as within. */
function between(mean: number, sd: number, a: number, b: number): number {
  if (sd === 0) return mean >= a && mean <= b ? 1 : 0;
  return normalBetween((a - mean) / sd, (b - mean) / sd);
}

function outside(mean: number, sd: number, a: number, b: number): number {
  if (sd === 0) return mean >= a && mean <= b ? 0 : 1;
  return normalCdf((a - mean) / sd) + normalUpper((b - mean) / sd);
}

/** Edges of the panels of a … b: nothing further than 38 process sds from the mean has any weight. */
function panelEdges(question: DecisionQuestion, from: number, to: number, a: number, b: number): number[] {
  const { processMean, processSd, uncertainty } = question;
  const start = Math.max(a, processMean - 38 * processSd);
  const end = Math.min(b, processMean + 38 * processSd);
  if (!(start < end)) return [];
  const edges = [start, end];
  for (let i = -76; i <= 76; i++) edges.push(processMean + (i * processSd) / 2);
  for (const limit of [from, to]) {
    for (let i = -12; i <= 12; i++) edges.push(limit + i * uncertainty);
  }
  return edges.filter((edge) => edge >= start && edge <= end).sort((p, q) => p - q);
}
