import { normalBetween, normalCdf, normalDensity } from '@/lib/stats/distributions';
import { integratePanel } from '@/lib/stats/numeric/gauss-legendre';
import type { Parts } from './parts';

/** Probabilities in the order neither, gauge, body, both. */
export type ClassProbabilities = [number, number, number, number];

/** What is smaller than this moves no probability that anybody reads. */
const SURE = 1e-7;

/** Beyond so many sds a normal distribution counts as nothing: 1e-6 on each side. */
const REACH = 4.75;

/** P(|value| ≤ limit) of a normal value. */
export const within = (mean: number, sd: number, limit: number): number => {
  if (sd < 1e-9) return Math.abs(mean) <= limit + 1e-9 ? 1 : 0;
  return normalBetween((-limit - mean) / sd, (limit - mean) / sd);
};

/** P(a < Z ≤ b) without care for the far tails, which an integrand does not need. */
const between = (a: number, b: number): number =>
  (b > REACH ? 1 : normalCdf(b)) - (a < -REACH ? 0 : normalCdf(a));

/** P(|gauge part| and |body part| beyond the tolerance or not), for a bivariate normal of the two. */
export function classProbabilities(parts: Parts, tolerance: number): ClassProbabilities {
  const bodyIn = within(parts.body, Math.sqrt(parts.varBody), tolerance);
  const gaugeIn = within(parts.gauge, Math.sqrt(parts.varGauge), tolerance);
  const least = Math.max(0, bodyIn + gaugeIn - 1);
  const most = Math.min(bodyIn, gaugeIn);
  const bothIn =
    most - least < SURE ? most : Math.min(most, Math.max(least, jointWithin(parts, tolerance, bodyIn)));
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
  return integrate(gauge, body, sdBody, slope, sd, tolerance);
}

/**
 * Integrates P(|gauge part| ≤ tolerance | body part) over the body part within the tolerance. That probability
 * rises from 0 to 1 and falls again around the two body parts that put the gauge part on its limits; where it
 * is 0 or 1 nothing is left to integrate, however narrow the line on which the two parts lie.
 */
function integrate(
  gauge: number,
  body: number,
  sdBody: number,
  slope: number,
  sd: number,
  tolerance: number,
): number {
  const from = Math.max(-tolerance, body - REACH * sdBody);
  const to = Math.min(tolerance, body + REACH * sdBody);
  if (to <= from) return 0;
  const scale = sd / Math.max(1e-12, Math.abs(slope));
  const middle = body - gauge / slope;
  const half = tolerance / Math.max(1e-12, Math.abs(slope));
  const f = (x: number): number => {
    const expected = gauge + slope * (x - body);
    return (
      (normalDensity((x - body) / sdBody) / sdBody) *
      between((-tolerance - expected) / sd, (tolerance - expected) / sd)
    );
  };
  if (!Number.isFinite(middle) || scale > to - from)
    return integratePanel(f, from, to, points(from, to, sdBody));
  const ramp = REACH * scale;
  const clip = (x: number): number => Math.min(to, Math.max(from, x));
  const edges = [middle - half - ramp, middle - half + ramp, middle + half - ramp, middle + half + ramp].map(
    clip,
  );
  const [rise = from, flat = from, fall = to, end = to] = edges;
  if (flat >= fall) return panels(f, rise, end, sdBody, scale);
  return (
    panels(f, rise, flat, sdBody, scale) +
    normalBetween((flat - body) / sdBody, (fall - body) / sdBody) +
    panels(f, fall, end, sdBody, scale)
  );
}

const points = (from: number, to: number, scale: number): number => (to - from > 5 * scale ? 12 : 8);

/** One panel for every ten of the narrower scale: a Gauss–Legendre panel of 12 points is exact to 1e-5 there. */
function panels(f: (x: number) => number, from: number, to: number, sdBody: number, scale: number): number {
  if (to <= from) return 0;
  const narrow = Math.min(sdBody, scale);
  const count = Math.ceil((to - from) / (2 * REACH * narrow));
  const step = (to - from) / count;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const start = from + i * step;
    sum += integratePanel(f, start, start + step, points(start, start + step, narrow));
  }
  return sum;
}
