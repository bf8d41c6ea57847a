const LOG_2PI = Math.log(2 * Math.PI);

/** ln density of one normal residual with this variance. */
export const single = (r: number, v: number): number => -0.5 * (LOG_2PI + Math.log(v) + (r * r) / v);

/** ln density of two normal residuals with these variances and this covariance. */
export function double(rL: number, rR: number, vL: number, vR: number, c: number): number {
  const det = vL * vR - c * c;
  return -LOG_2PI - 0.5 * (Math.log(det) + (vR * rL * rL - 2 * c * rL * rR + vL * rR * rR) / det);
}
