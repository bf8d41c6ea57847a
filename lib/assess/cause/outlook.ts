import type { Beam } from './beam';
import { componentAt, patternProbability } from './explanation';
import { type Pattern, PATTERNS } from './learned';
import type { PairModel, RoundModel } from './model';
import { BROAD_SD, SIDE_DIFFERENCE } from './sizes';

const LOG_2PI = Math.log(2 * Math.PI);
const BROAD = BROAD_SD ** 2;
const BROAD_DIFFERENCE = (SIDE_DIFFERENCE * BROAD_SD) ** 2;

/**
 * However large what is wrong may be, ln of its density counts as no less than this, on one side and on both: a slip
 * of 100 mm is as likely here as one of 3, and must not make up a datum that is off by 100.
 */
const FREE_SIDE = -5;
const FREE_BOTH = -8;

/** Where a station is hardly ever sound, what is foreseen is no less than this for it. */
const LEAST = 1e-9;

/** A setup that is still to be taken: what its readings tell of the datum where nothing is wrong, and how likely that is. */
interface Coming {
  pair: PairModel;
  step: number;
  /** It hangs at the station under way, whose body is in the state. */
  under: boolean;
  /** Variances and covariance of its readings around datum and known body, nothing being wrong, mm². */
  vL: number;
  vR: number;
  c: number;
  /** ln prior that nothing is wrong, that something is on one side, or on both. */
  none: number;
  left: number;
  right: number;
  both: number;
  /** ln of the most that its readings can count. */
  most: number;
}

/** By step, the setups that are looked ahead at from there. */
export type Outlook = readonly (readonly Coming[])[];

/**
 * What is looked ahead at: of a station under way all setups that are left, of the others the first. Later ones tell of
 * the body what the first does not, but of the datum hardly more.
 */
export function outlookOf(model: RoundModel): Outlook {
  const first = model.steps.map((pair, step) => (pair.first ? coming(model, pair, step, false) : null));
  return model.steps.map((next, at) =>
    model.steps.flatMap((pair, step): Coming[] => {
      if (step < at) return [];
      if (!next.first && pair.station === next.station) return [coming(model, pair, step, true)];
      const far = first[step];
      return far ? [far] : [];
    }),
  );
}

function coming(model: RoundModel, pair: PairModel, step: number, under: boolean): Coming {
  const [ordinary] = pair.settings;
  const damaged = (pattern: Pattern): number =>
    under ? 0 : chance(model, pair.station, PATTERNS.indexOf(pattern));
  const onLeft = damaged('left');
  const onRight = damaged('right');
  const onBoth = damaged('both') + damaged('opposed');
  const scatter = under ? 0 : componentAt(model.bodies, 0).varLeft;
  const none = Math.log(Math.max(LEAST, 1 - onLeft - onRight - onBoth)) + (ordinary?.logPrior ?? 0);
  const left = Math.log(onLeft + pair.wrong[0]);
  const right = Math.log(onRight + pair.wrong[1]);
  const both = Math.log(onBoth + pair.wrong[2]);
  const vL = (ordinary?.varLeft ?? 0) + scatter + pair.noise[0] + pair.commonNoise;
  const vR = (ordinary?.varRight ?? 0) + scatter + pair.noise[1] + pair.commonNoise;
  const c = (ordinary?.covariance ?? 0) + pair.commonNoise;
  const density = !pair.hasLeft
    ? single(0, vR)
    : !pair.hasRight
      ? single(0, vL)
      : Math.max(single(0, vL) + single(0, vR), double(0, 0, vL, vR, c));
  const most = Math.log(Math.exp(none) + Math.exp(left) + Math.exp(right) + Math.exp(both)) + density;
  return { pair, step, under, vL, vR, c, none, left, right, both, most };
}

const chance = (model: RoundModel, station: number, pattern: number): number =>
  model.shares.reduce(
    (sum, share, impact) => sum + share * patternProbability(model, impact, station, pattern),
    0,
  );

/** What is foreseen of one explanation, ln: of the setup that is next and those after it, and of these alone. */
interface Foreseen {
  all: number;
  after: number;
}

let mean = new Float64Array(8);
let covariance = new Float64Array(64);
/** Covariance of the state with the two readings under way. */
let left = new Float64Array(8);
let right = new Float64Array(8);
const foreseen: Foreseen = { all: 0, after: 0 };

/**
 * Roughly how well the readings from `step` on will fit an explanation of a beam: each setup in turn is taken as
 * ordinary at a sound station, which then tells more of the datum, or as anything on one side or on both, whichever is
 * likeliest. Overwritten by the next call.
 * @param enough below this, ln, it is not worth knowing; what comes back then is a bound, and `after` nothing.
 */
export function foresee(
  outlook: readonly Coming[],
  beam: Beam,
  index: number,
  step: number,
  enough: number,
): Foreseen {
  let bound = 0;
  for (const { most } of outlook) bound += most;
  foreseen.all = bound;
  foreseen.after = 0;
  if (bound < enough) return foreseen;
  takeState(beam, index);
  const last = outlook.length - 1;
  for (let at = 0; at <= last; at++) {
    const one = outlook[at];
    if (one === undefined) break;
    const value = take(one, beam.size, at < last);
    bound += value - one.most;
    if (one.step > step) foreseen.after += value;
    if (bound < enough) break;
  }
  foreseen.all = bound;
  return foreseen;
}

function takeState(beam: Beam, index: number): void {
  const n = beam.size;
  if (mean.length < n) {
    mean = new Float64Array(n);
    covariance = new Float64Array(n * n);
    left = new Float64Array(n);
    right = new Float64Array(n);
  }
  const m = index * n;
  const C = m * n;
  for (let i = 0; i < n; i++) mean[i] = beam.mean[m + i] ?? 0;
  for (let i = 0; i < n * n; i++) covariance[i] = beam.covariance[C + i] ?? 0;
}

/** One setup: what its readings count for, and, where it is taken as ordinary, what they tell of the state. */
function take(one: Coming, n: number, goesOn: boolean): number {
  const { pair, under } = one;
  const [wa, wb] = pair.weights;
  const p = pair.zeros[0] - 4;
  const q = pair.zeros[1] - 4;
  const b = n - 2;
  for (let i = 0; i < n; i++) {
    const row = i * n;
    left[i] = -wa * (covariance[row + p] ?? 0) - wb * (covariance[row + q] ?? 0);
    right[i] = -wa * (covariance[row + p + 1] ?? 0) - wb * (covariance[row + q + 1] ?? 0);
  }
  let rL = pair.y[0] + wa * (mean[p] ?? 0) + wb * (mean[q] ?? 0);
  let rR = pair.y[1] + wa * (mean[p + 1] ?? 0) + wb * (mean[q + 1] ?? 0);
  let vL = one.vL;
  let vR = one.vR;
  let c = one.c;
  if (under) {
    for (let i = 0; i < n; i++) {
      left[i] = (left[i] ?? 0) + (covariance[i * n + b] ?? 0);
      right[i] = (right[i] ?? 0) + (covariance[i * n + b + 1] ?? 0);
    }
    rL -= mean[b] ?? 0;
    rR -= mean[b + 1] ?? 0;
    vL += left[b] ?? 0;
    vR += right[b + 1] ?? 0;
    c += left[b + 1] ?? 0;
  }
  vL -= wa * (left[p] ?? 0) + wb * (left[q] ?? 0);
  vR -= wa * (right[p + 1] ?? 0) + wb * (right[q + 1] ?? 0);
  c -= wa * (left[p + 1] ?? 0) + wb * (left[q + 1] ?? 0);
  if (!pair.hasLeft || !pair.hasRight) {
    const [r, v, side] = pair.hasLeft ? [rL, vL, one.left] : [rR, vR, one.right];
    const fits = one.none + single(r, v);
    const free = Math.max(side, one.both) + Math.max(FREE_SIDE, single(r, v + BROAD));
    if (free > fits) return free;
    if (goesOn) tell(n, pair.hasLeft ? 1 / v : 0, pair.hasLeft ? 0 : 1 / v, 0, rL, rR);
    return fits;
  }
  const none = one.none + double(rL, rR, vL, vR, c);
  const offLeft = one.left + Math.max(FREE_SIDE, single(rL, vL + BROAD)) + single(rR, vR);
  const offRight = one.right + Math.max(FREE_SIDE, single(rR, vR + BROAD)) + single(rL, vL);
  const ownL = BROAD + BROAD_DIFFERENCE;
  const off = one.both + Math.max(FREE_BOTH, double(rL, rR, vL + ownL, vR + ownL, c + BROAD));
  const likeliest = Math.max(none, offLeft, offRight, off);
  if (goesOn) {
    if (likeliest === none) {
      const det = vL * vR - c * c;
      tell(n, vR / det, vL / det, -c / det, rL, rR);
    } else if (likeliest === offLeft) tell(n, 0, 1 / vR, 0, rL, rR);
    else if (likeliest === offRight) tell(n, 1 / vL, 0, 0, rL, rR);
  }
  return likeliest;
}

/** ln density of one residual. */
const single = (r: number, v: number): number => -0.5 * (LOG_2PI + Math.log(v) + (r * r) / v);

/** ln density of two residuals. */
function double(rL: number, rR: number, vL: number, vR: number, c: number): number {
  const det = vL * vR - c * c;
  return -LOG_2PI - 0.5 * (Math.log(det) + (vR * rL * rL - 2 * c * rL * rR + vL * rR * rR) / det);
}

/** Conditions the state on both readings, given the inverse of their covariance. */
function tell(n: number, iL: number, iR: number, iC: number, rL: number, rR: number): void {
  const gL = iL * rL + iC * rR;
  const gR = iC * rL + iR * rR;
  for (let i = 0; i < n; i++) {
    const a = left[i] ?? 0;
    const b = right[i] ?? 0;
    mean[i] = (mean[i] ?? 0) + a * gL + b * gR;
    const kL = a * iL + b * iC;
    const kR = a * iC + b * iR;
    const row = i * n;
    for (let j = 0; j < n; j++)
      covariance[row + j] = (covariance[row + j] ?? 0) - kL * (left[j] ?? 0) - kR * (right[j] ?? 0);
  }
}
