import { normalBetween } from '@/lib/stats/distributions';
import type { Parts } from './parts';

/** Probabilities in the order neither, gauge, body, both. */
export type ClassProbabilities = [number, number, number, number];

// Gauss–Legendre, 12 points on [−1, 1] (Abramowitz & Stegun, table 25.4).
const NODES = [
  0.1252334085114689, 0.3678314989981802, 0.5873179542866175, 0.7699026741943047, 0.9041172563704749,
  0.9815606342467192,
];
const WEIGHTS = [
  0.2491470458134028, 0.2334925365383548, 0.2031674267230659, 0.1600783285433462, 0.1069393259953184,
  0.0471753363865118,
];

const within = (mean: number, sd: number, limit: number): number => {
  if (sd < 1e-9) return Math.abs(mean) <= limit + 1e-9 ? 1 : 0;
  return normalBetween((-limit - mean) / sd, (limit - mean) / sd);
};

/** P(|gauge part| and |body part| beyond the tolerance or not), for a bivariate normal of the two. */
export function classProbabilities(parts: Parts, tolerance: number): ClassProbabilities {
  const sdBody = Math.sqrt(parts.varBody);
  const sdGauge = Math.sqrt(parts.varGauge);
  const bodyIn = within(parts.body, sdBody, tolerance);
  const gaugeIn = within(parts.gauge, sdGauge, tolerance);
  const bothIn = jointWithin(parts, tolerance, sdBody, sdGauge, bodyIn, gaugeIn);
  const gauge = Math.max(0, bodyIn - bothIn);
  const body = Math.max(0, gaugeIn - bothIn);
  return [bothIn, gauge, body, Math.max(0, 1 - bothIn - gauge - body)];
}

function jointWithin(
  parts: Parts,
  tolerance: number,
  sdBody: number,
  sdGauge: number,
  bodyIn: number,
  gaugeIn: number,
): number {
  const sure = 1e-7;
  if (bodyIn < sure || gaugeIn < sure) return Math.min(bodyIn, gaugeIn);
  if (bodyIn > 1 - sure) return gaugeIn;
  if (gaugeIn > 1 - sure) return bodyIn;
  if (sdBody < 1e-6 || sdGauge < 1e-6) return bodyIn * gaugeIn;
  const slope = parts.covariance / parts.varBody;
  const sd = Math.sqrt(Math.max(1e-12, parts.varGauge - slope * parts.covariance));
  const from = Math.max(-tolerance, parts.body - 6 * sdBody);
  const to = Math.min(tolerance, parts.body + 6 * sdBody);
  if (to <= from) return 0;
  const half = (to - from) / 2;
  const middle = (from + to) / 2;
  let sum = 0;
  for (let i = 0; i < NODES.length; i++) {
    for (const sign of [-1, 1]) {
      const x = middle + sign * half * (NODES[i] ?? 0);
      const z = (x - parts.body) / sdBody;
      sum +=
        (WEIGHTS[i] ?? 0) *
        Math.exp(-0.5 * z * z) *
        within(parts.gauge + slope * (x - parts.body), sd, tolerance);
    }
  }
  return Math.min(bodyIn, gaugeIn, (sum * half) / (sdBody * Math.sqrt(2 * Math.PI)));
}
