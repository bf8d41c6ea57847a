import { normalCdfByTable } from '@/lib/stats/distributions/normal-table';
import { gaussLegendre } from '@/lib/stats/numeric/gauss-legendre';
import type { Parts } from './parts';

/** Probabilities in the order neither, gauge, body, both. */
export type ClassProbabilities = [number, number, number, number];

/** What is smaller than this moves no probability that anybody reads. */
export const SURE = 1e-7;

/** Beyond so many sds a normal distribution counts as nothing: 1e-6 on each side. */
const REACH = 4.75;

const PER_SD = 1 / Math.sqrt(2 * Math.PI);

/** P(|value| ≤ limit) of a normal value, absolute error below 4e-11. */
export const within = (mean: number, sd: number, limit: number): number => {
  if (sd < 1e-9) return Math.abs(mean) <= limit + 1e-9 ? 1 : 0;
  return normalCdfByTable((limit - mean) / sd) - normalCdfByTable((-limit - mean) / sd);
};

/**
 * P(|gauge part| and |body part| beyond the tolerance or not), for a bivariate normal of the two.
 * @param sure what may be left open of each: where the two parts by themselves tell so much, they are not integrated
 * together.
 */
export function classProbabilities(parts: Parts, tolerance: number, sure = SURE): ClassProbabilities {
  const bodyIn = within(parts.body, Math.sqrt(parts.varBody), tolerance);
  const gaugeIn = within(parts.gauge, Math.sqrt(parts.varGauge), tolerance);
  const least = Math.max(0, bodyIn + gaugeIn - 1);
  const most = Math.min(bodyIn, gaugeIn);
  const bothIn =
    most - least < sure
      ? (most + least) / 2
      : Math.min(most, Math.max(least, jointWithin(parts, tolerance, bodyIn)));
  const gauge = Math.max(0, bodyIn - bothIn);
  const body = Math.max(0, gaugeIn - bothIn);
  return [bothIn, gauge, body, Math.max(0, 1 - bothIn - gauge - body)];
}

/** P(both parts within the tolerance). */
function jointWithin(parts: Parts, tolerance: number, bodyIn: number): number {
  const { gauge, body, varGauge, varBody, covariance } = parts;
  const sdBody = Math.sqrt(varBody);
  // Both within means that their sum is within twice the tolerance, and the sum is what a reading shows well.
  const sum = within(
    gauge + body,
    Math.sqrt(Math.max(0, varGauge + varBody + 2 * covariance)),
    2 * tolerance,
  );
  if (sum < SURE) return 0;
  if (sdBody < 1e-6) return bodyIn * within(gauge, Math.sqrt(varGauge), tolerance);
  const slope = covariance / varBody;
  const sd = Math.sqrt(Math.max(1e-12, varGauge - slope * covariance));
  return integrate({ gauge, body, sdBody, slope, sd, tolerance });
}

/** What is integrated: the density of the body part times P(|gauge part| ≤ tolerance | body part). */
interface Integrand {
  gauge: number;
  body: number;
  sdBody: number;
  /** Of the gauge part's mean on the body part, and its sd given the body part. */
  slope: number;
  sd: number;
  tolerance: number;
}

/**
 * Integrates P(|gauge part| ≤ tolerance | body part) over the body part within the tolerance. That probability
 * rises from 0 to 1 and falls again around the two body parts that put the gauge part on its limits; where it
 * is 0 or 1 nothing is left to integrate, however narrow the line on which the two parts lie.
 */
function integrate(of: Integrand): number {
  const { gauge, body, sdBody, slope, sd, tolerance } = of;
  const from = Math.max(-tolerance, body - REACH * sdBody);
  const to = Math.min(tolerance, body + REACH * sdBody);
  if (to <= from) return 0;
  const steepness = Math.max(1e-12, Math.abs(slope));
  const scale = sd / steepness;
  const middle = body - gauge / slope;
  const half = tolerance / steepness;
  if (!Number.isFinite(middle) || scale > to - from) return panel(of, from, to, points(from, to, sdBody));
  const ramp = REACH * scale;
  const rise = clip(middle - half - ramp, from, to);
  const flat = clip(middle - half + ramp, from, to);
  const fall = clip(middle + half - ramp, from, to);
  const end = clip(middle + half + ramp, from, to);
  if (flat >= fall) return panels(of, rise, end, scale);
  return (
    panels(of, rise, flat, scale) +
    normalCdfByTable((fall - body) / sdBody) -
    normalCdfByTable((flat - body) / sdBody) +
    panels(of, fall, end, scale)
  );
}

const clip = (x: number, from: number, to: number): number => Math.min(to, Math.max(from, x));

const points = (from: number, to: number, scale: number): number => (to - from > 5 * scale ? 12 : 8);

/** One panel for every ten of the narrower scale: a Gauss–Legendre panel of 12 points is exact to 1e-5 there. */
function panels(of: Integrand, from: number, to: number, scale: number): number {
  if (to <= from) return 0;
  const narrow = Math.min(of.sdBody, scale);
  const count = Math.ceil((to - from) / (2 * REACH * narrow));
  const step = (to - from) / count;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const start = from + i * step;
    sum += panel(of, start, start + step, points(start, start + step, narrow));
  }
  return sum;
}

function panel(of: Integrand, from: number, to: number, count: number): number {
  const { gauge, body, sdBody, slope, sd, tolerance } = of;
  const { nodes, weights } = gaussLegendre(count);
  const half = (to - from) / 2;
  const middle = from + half;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const away = middle + half * (nodes[i] ?? 0) - body;
    const expected = gauge + slope * away;
    const z = away / sdBody;
    sum +=
      (weights[i] ?? 0) *
      Math.exp(-0.5 * z * z) *
      (normalCdfByTable((tolerance - expected) / sd) - normalCdfByTable((-tolerance - expected) / sd));
  }
  return (sum * half * PER_SD) / sdBody;
}
