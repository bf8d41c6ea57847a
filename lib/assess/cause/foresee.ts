import type { Component } from './components';
import { double, single } from './densities';
import {
  BROAD,
  BROAD_DIFFERENCE,
  C_BOTH,
  type Coming,
  FREE_BOTH,
  FREE_LEFT,
  FREE_RIGHT,
  FREE_SIDE,
  LEVER_A,
  LEVER_B,
  MOST,
  MOST_BOTH,
  MOST_LEFT,
  MOST_RIGHT,
  NONE,
  OFF_BOTH,
  OFF_LEFT,
  OFF_RIGHT,
  V_LEFT,
  V_RIGHT,
  Y_LEFT,
  Y_RIGHT,
} from './outlook';

/** What is foreseen of one explanation, ln: of the setup that is next and those after it, and of these alone. */
interface Foreseen {
  all: number;
  after: number;
}

const foreseen: Foreseen = { all: 0, after: 0 };

/** The state that is looked ahead from: datum errors first, then, while one is under way, the body at a station. */
let mean = new Float64Array(8);
let covariance = new Float64Array(64);
/** Covariance of the state with the two readings under way. */
let left = new Float64Array(8);
let right = new Float64Array(8);

/** Room for a state of `n` entries, whose covariance is row-major; `foresee` overwrites it. */
export function stateAhead(n: number): { mean: Float64Array; covariance: Float64Array } {
  if (mean.length < n) {
    mean = new Float64Array(n);
    covariance = new Float64Array(n * n);
    left = new Float64Array(n);
    right = new Float64Array(n);
  }
  return { mean, covariance };
}

/**
 * Roughly how well the readings from `step` on will fit the state that was put into `stateAhead`: each setup in turn is
 * taken as ordinary at a sound station, which then tells more of the datum, or as anything on one side or on both,
 * whichever is likeliest. Overwritten by the next call.
 * @param n entries of the state; the last two are the body of the station under way where the first setup hangs there.
 * @param most what `mostOf` says of the outlook.
 * @param enough below this, ln, it is not worth knowing; what comes back then is a bound.
 * @param first what `takeFirst` said of the first setup, where it was asked just before.
 */
export function foresee(
  outlook: readonly Coming[],
  n: number,
  step: number,
  most: number,
  enough: number,
  first = Number.NaN,
): Foreseen {
  const errors = outlook[0]?.under === true ? n - 2 : n;
  let bound = most;
  let after = 0;
  for (let at = 0; at < outlook.length; at++) {
    const one = outlook[at];
    if (one === undefined) break;
    const value = at === 0 && !Number.isNaN(first) ? first : take(one, n);
    bound += value - (one.numbers[MOST] ?? 0);
    if (one.step > step) after += value;
    if (bound < enough) break;
    const next = outlook[at + 1];
    // What is known of a station's body matters no more as soon as its setups are through.
    if (next !== undefined) tell(one, n, next.under ? n : errors);
  }
  foreseen.all = bound;
  foreseen.after = after;
  return foreseen;
}

function take(one: Coming, n: number): number {
  expectBoth(one, n);
  return weigh(one);
}

/**
 * The first setup of all by an opening, without its state: as long as nothing was read, the two datum errors that carry
 * it do not hang together. Four openings in ten are let go by it.
 * @param bodyA body and setting at the front, which make up the datum error there; then those at the rear.
 * @returns ln of what its readings count for
 */
export function takeFirst(
  one: Coming,
  bodyA: Component,
  settingA: Component,
  bodyB: Component,
  settingB: Component,
): number {
  const { numbers } = one;
  const wa = numbers[LEVER_A] ?? 0;
  const wb = numbers[LEVER_B] ?? 0;
  told[0] = (numbers[Y_LEFT] ?? 0) + wa * (bodyA.left + settingA.left) + wb * (bodyB.left + settingB.left);
  told[1] =
    (numbers[Y_RIGHT] ?? 0) + wa * (bodyA.right + settingA.right) + wb * (bodyB.right + settingB.right);
  seen[0] =
    (numbers[V_LEFT] ?? 0) +
    (wa * (wa * (bodyA.varLeft + settingA.varLeft)) + wb * (wb * (bodyB.varLeft + settingB.varLeft)));
  seen[1] =
    (numbers[V_RIGHT] ?? 0) +
    (wa * (wa * (bodyA.varRight + settingA.varRight)) + wb * (wb * (bodyB.varRight + settingB.varRight)));
  seen[2] =
    (numbers[C_BOTH] ?? 0) +
    (wa * (wa * (bodyA.covariance + settingA.covariance)) +
      wb * (wb * (bodyB.covariance + settingB.covariance)));
  return weigh(one);
}

/** What the setup that was taken last tells of the state: residuals left and right, and the inverse of their covariance. */
const told = new Float64Array(5);

function telling(iL: number, iR: number, iC: number): void {
  told[2] = iL;
  told[3] = iR;
  told[4] = iC;
}

/** Residuals of the two readings, and their covariance: what `expectBoth` has found last. */
const seen = new Float64Array(3);

function expectBoth({ under, zeroA: p, zeroB: q, numbers }: Coming, n: number): void {
  const wa = numbers[LEVER_A] ?? 0;
  const wb = numbers[LEVER_B] ?? 0;
  const pL = p * n;
  const pR = pL + n;
  const qL = q * n;
  const qR = qL + n;
  // Covariances of the datum errors with the two readings.
  let leftP = -wa * (covariance[pL + p] ?? 0) - wb * (covariance[pL + q] ?? 0);
  let leftQ = -wa * (covariance[qL + p] ?? 0) - wb * (covariance[qL + q] ?? 0);
  let crossP = -wa * (covariance[pR + p] ?? 0) - wb * (covariance[pR + q] ?? 0);
  let crossQ = -wa * (covariance[qR + p] ?? 0) - wb * (covariance[qR + q] ?? 0);
  let rightP = -wa * (covariance[pR + p + 1] ?? 0) - wb * (covariance[pR + q + 1] ?? 0);
  let rightQ = -wa * (covariance[qR + p + 1] ?? 0) - wb * (covariance[qR + q + 1] ?? 0);
  let rL = (numbers[Y_LEFT] ?? 0) + wa * (mean[p] ?? 0) + wb * (mean[q] ?? 0);
  let rR = (numbers[Y_RIGHT] ?? 0) + wa * (mean[p + 1] ?? 0) + wb * (mean[q + 1] ?? 0);
  let vL = numbers[V_LEFT] ?? 0;
  let vR = numbers[V_RIGHT] ?? 0;
  let c = numbers[C_BOTH] ?? 0;
  if (under) {
    const b = n - 2;
    const bL = b * n;
    const bR = bL + n;
    leftP += covariance[pL + b] ?? 0;
    leftQ += covariance[qL + b] ?? 0;
    crossP += covariance[pR + b] ?? 0;
    crossQ += covariance[qR + b] ?? 0;
    rightP += covariance[pR + b + 1] ?? 0;
    rightQ += covariance[qR + b + 1] ?? 0;
    rL -= mean[b] ?? 0;
    rR -= mean[b + 1] ?? 0;
    vL += -wa * (covariance[bL + p] ?? 0) - wb * (covariance[bL + q] ?? 0) + (covariance[bL + b] ?? 0);
    vR +=
      -wa * (covariance[bR + p + 1] ?? 0) -
      wb * (covariance[bR + q + 1] ?? 0) +
      (covariance[bR + b + 1] ?? 0);
    c += -wa * (covariance[bR + p] ?? 0) - wb * (covariance[bR + q] ?? 0) + (covariance[bR + b] ?? 0);
  }
  told[0] = rL;
  told[1] = rR;
  seen[0] = vL - (wa * leftP + wb * leftQ);
  seen[1] = vR - (wa * rightP + wb * rightQ);
  seen[2] = c - (wa * crossP + wb * crossQ);
}

/** What the readings of a setup count for, ln, beside what is expected of them (`told`, `seen`). */
const weigh = (one: Coming): number => (one.hasLeft && one.hasRight ? weighBoth(one) : weighOne(one));

/** One setup that was read on both sides: ln of what its readings count for. */
function weighBoth({ numbers }: Coming): number {
  const rL = told[0] ?? 0;
  const rR = told[1] ?? 0;
  const vL = seen[0] ?? 0;
  const vR = seen[1] ?? 0;
  const c = seen[2] ?? 0;
  const none = (numbers[NONE] ?? 0) + double(rL, rR, vL, vR, c);
  const zL = (rL * rL) / vL;
  const zR = (rR * rR) / vR;
  let likeliest = none;
  let way = NONE;
  // A logarithm costs more than a bound, and mostly one of them is enough.
  const wL = vL + BROAD;
  const atMostLeft =
    (numbers[MOST_LEFT] ?? 0) - 0.5 * zR + Math.max(numbers[FREE_LEFT] ?? 0, (-0.5 * rL * rL) / wL);
  if (atMostLeft > likeliest) {
    const value = (numbers[OFF_LEFT] ?? 0) + Math.max(FREE_SIDE, single(rL, wL)) + single(rR, vR);
    if (value > likeliest) {
      likeliest = value;
      way = OFF_LEFT;
    }
  }
  const wR = vR + BROAD;
  const atMostRight =
    (numbers[MOST_RIGHT] ?? 0) - 0.5 * zL + Math.max(numbers[FREE_RIGHT] ?? 0, (-0.5 * rR * rR) / wR);
  if (atMostRight > likeliest) {
    const value = (numbers[OFF_RIGHT] ?? 0) + Math.max(FREE_SIDE, single(rR, wR)) + single(rL, vL);
    if (value > likeliest) {
      likeliest = value;
      way = OFF_RIGHT;
    }
  }
  if ((numbers[MOST_BOTH] ?? 0) > likeliest) {
    const own = BROAD + BROAD_DIFFERENCE;
    const value =
      (numbers[OFF_BOTH] ?? 0) + Math.max(FREE_BOTH, double(rL, rR, vL + own, vR + own, c + BROAD));
    if (value > likeliest) {
      likeliest = value;
      way = OFF_BOTH;
    }
  }
  if (way === NONE) {
    const det = vL * vR - c * c;
    telling(vR / det, vL / det, -c / det);
  } else telling(way === OFF_RIGHT ? 1 / vL : 0, way === OFF_LEFT ? 1 / vR : 0, 0);
  return likeliest;
}

/** The same where one side was read. */
function weighOne({ hasLeft, numbers }: Coming): number {
  const r = (hasLeft ? told[0] : told[1]) ?? 0;
  const v = (hasLeft ? seen[0] : seen[1]) ?? 0;
  const fits = (numbers[NONE] ?? 0) + single(r, v);
  const side = Math.max(numbers[hasLeft ? OFF_LEFT : OFF_RIGHT] ?? 0, numbers[OFF_BOTH] ?? 0);
  const free = side + Math.max(FREE_SIDE, single(r, v + BROAD));
  if (free > fits) telling(0, 0, 0);
  else telling(hasLeft ? 1 / v : 0, hasLeft ? 0 : 1 / v, 0);
  return Math.max(free, fits);
}

/** Conditions the first `met` entries of the state on what was taken last. */
function tell({ under, zeroA: p, zeroB: q, numbers }: Coming, n: number, met: number): void {
  const rL = told[0] ?? 0;
  const rR = told[1] ?? 0;
  const iL = told[2] ?? 0;
  const iR = told[3] ?? 0;
  const iC = told[4] ?? 0;
  if (iL === 0 && iR === 0) return;
  const wa = numbers[LEVER_A] ?? 0;
  const wb = numbers[LEVER_B] ?? 0;
  const b = n - 2;
  for (let i = 0; i < met; i++) {
    const row = i * n;
    const body = under ? (covariance[row + b] ?? 0) : 0;
    const other = under ? (covariance[row + b + 1] ?? 0) : 0;
    left[i] = body - wa * (covariance[row + p] ?? 0) - wb * (covariance[row + q] ?? 0);
    right[i] = other - wa * (covariance[row + p + 1] ?? 0) - wb * (covariance[row + q + 1] ?? 0);
  }
  const gL = iL * rL + iC * rR;
  const gR = iC * rL + iR * rR;
  for (let i = 0; i < met; i++) {
    const a = left[i] ?? 0;
    const z = right[i] ?? 0;
    mean[i] = (mean[i] ?? 0) + a * gL + z * gR;
    const kL = a * iL + z * iC;
    const kR = a * iC + z * iR;
    const row = i * n;
    for (let j = 0; j < met; j++)
      covariance[row + j] = (covariance[row + j] ?? 0) - kL * (left[j] ?? 0) - kR * (right[j] ?? 0);
  }
}
