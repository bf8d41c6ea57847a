import type { Beam } from './beam';
import type { PairModel } from './model';

/** Readings' residual and covariance under an explanation, before any setting (and, at a new station, body). */
export interface Expected {
  yL: number;
  yR: number;
  vL: number;
  vR: number;
  c: number;
}

export const nothingExpected = (): Expected => ({ yL: 0, yR: 0, vL: 0, vR: 0, c: 0 });

/** Works it out for one explanation of a beam. */
export function expectReadings(beam: Beam, index: number, pair: PairModel, into: Expected): void {
  const { size: n, mean, covariance } = beam;
  const [wa, wb] = pair.weights;
  const m = index * n;
  const p = pair.zeros[0] - 4;
  const q = pair.zeros[1] - 4;
  const pL = index * n * n + p * n;
  const pR = pL + n;
  const qL = index * n * n + q * n;
  const qR = qL + n;
  const aa = wa * wa;
  const ab = wa * wb;
  const bb = wb * wb;
  let yL = pair.y[0] + wa * (mean[m + p] ?? 0) + wb * (mean[m + q] ?? 0);
  let yR = pair.y[1] + wa * (mean[m + p + 1] ?? 0) + wb * (mean[m + q + 1] ?? 0);
  let vL =
    aa * (covariance[pL + p] ?? 0) + 2 * ab * (covariance[pL + q] ?? 0) + bb * (covariance[qL + q] ?? 0);
  let vR =
    aa * (covariance[pR + p + 1] ?? 0) +
    2 * ab * (covariance[pR + q + 1] ?? 0) +
    bb * (covariance[qR + q + 1] ?? 0);
  let c =
    aa * (covariance[pL + p + 1] ?? 0) +
    ab * ((covariance[pL + q + 1] ?? 0) + (covariance[pR + q] ?? 0)) +
    bb * (covariance[qL + q + 1] ?? 0);
  if (!pair.first) {
    const b = n - 2;
    yL -= mean[m + b] ?? 0;
    yR -= mean[m + b + 1] ?? 0;
    const bL = index * n * n + b * n;
    const bR = bL + n;
    vL += (covariance[bL + b] ?? 0) - 2 * (wa * (covariance[pL + b] ?? 0) + wb * (covariance[qL + b] ?? 0));
    vR +=
      (covariance[bR + b + 1] ?? 0) -
      2 * (wa * (covariance[pR + b + 1] ?? 0) + wb * (covariance[qR + b + 1] ?? 0));
    c +=
      (covariance[bL + b + 1] ?? 0) -
      wa * ((covariance[pL + b + 1] ?? 0) + (covariance[pR + b] ?? 0)) -
      wb * ((covariance[qL + b + 1] ?? 0) + (covariance[qR + b] ?? 0));
  }
  into.yL = yL;
  into.yR = yR;
  into.vL = vL + pair.noise[0] + pair.commonNoise;
  into.vR = vR + pair.noise[1] + pair.commonNoise;
  into.c = c + pair.commonNoise;
}
