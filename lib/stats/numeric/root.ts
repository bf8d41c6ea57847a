/**
 * Root of a continuous function between two points where its signs differ, to the last digit.
 *
 * Bisection and inverse interpolation combined (Brent 1973, Algorithms for Minimization without
 * Derivatives, chapter 4). RangeError where the signs do not differ.
 */
export function findRoot(f: (x: number) => number, from: number, to: number): number {
  let a = from;
  let b = to;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0)) throw new RangeError(`No change of sign between ${from} and ${to}.`);
  let c = a;
  let fc = fa;
  let step = b - a;
  let previous = step;
  for (let i = 0; i < 300; i++) {
    if (fb < 0 === fc < 0) {
      c = a;
      fc = fa;
      step = previous = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const tolerance = 2.3e-16 * Math.abs(b);
    const half = (c - b) / 2;
    if (Math.abs(half) <= tolerance || fb === 0) return b;
    const interpolated = interpolate(a, b, c, fa, fb, fc);
    const accepted =
      Math.abs(interpolated) < Math.abs(previous) / 2 &&
      interpolated * half > 0 &&
      Math.abs(interpolated) < 1.5 * Math.abs(half);
    previous = accepted ? step : half;
    step = accepted ? interpolated : half;
    a = b;
    fa = fb;
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
  }
  return b;
}

/** The step from b of the secant (two points) or of inverse quadratic interpolation (three). */
function interpolate(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  if (a === c) return (-fb * (b - a)) / (fb - fa);
  const r = fb / fc;
  const s = fb / fa;
  const t = fa / fc;
  return (s * (t * (r - t) * (c - b) - (1 - r) * (b - a))) / ((t - 1) * (r - 1) * (s - 1));
}
