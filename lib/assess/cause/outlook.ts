import { double, single } from './densities';
import { componentAt, patternProbability } from './explanation';
import { PATTERNS } from './learned';
import type { PairModel, RoundModel } from './model';
import { BROAD_SD, SIDE_DIFFERENCE } from './sizes';

/** However large what is wrong may be, it is one broad normal distribution, and its sides differ by this, mm². */
export const BROAD = BROAD_SD ** 2;
export const BROAD_DIFFERENCE = (SIDE_DIFFERENCE * BROAD_SD) ** 2;

/**
 * However large what is wrong may be, ln of its density counts as no less than this, on one side and on both: a slip
 * of 100 mm is as likely here as one of 3, and must not make up a datum that is off by 100.
 */
export const FREE_SIDE = -5;
export const FREE_BOTH = -8;

/** Where a station is hardly ever sound, what is foreseen is no less than this for it. */
const LEAST = 1e-9;

/** Where the numbers of a setup that is to come stand in `numbers`: the zero stations' levers, and its readings. */
export const LEVER_A = 0;
export const LEVER_B = 1;
export const Y_LEFT = 2;
export const Y_RIGHT = 3;
/** Variances and covariance of its readings around datum and known body, nothing being wrong, mm². */
export const V_LEFT = 4;
export const V_RIGHT = 5;
export const C_BOTH = 6;
/** ln prior that nothing is wrong, that something is on the left, on the right, or on both sides. */
export const NONE = 7;
export const OFF_LEFT = 8;
export const OFF_RIGHT = 9;
export const OFF_BOTH = 10;
/** ln of the most that its readings can count at all, and if so much is wrong. */
export const MOST = 11;
export const MOST_LEFT = 12;
export const MOST_RIGHT = 13;
export const MOST_BOTH = 14;
/** By how much, ln, a side counts at least below the most that it can as something that is wrong. */
export const FREE_LEFT = 15;
export const FREE_RIGHT = 16;
const NUMBERS = 17;

/** A setup that is still to be taken: what its readings tell of the datum where nothing is wrong, and how likely that is. */
export interface Coming {
  step: number;
  /** It hangs at the station under way, whose body is in the state. */
  under: boolean;
  hasLeft: boolean;
  hasRight: boolean;
  /** Places of the two datum errors in the state, left; right is one more. */
  zeroA: number;
  zeroB: number;
  numbers: Float64Array;
}

/** By step, the setups that are looked ahead at from there. */
export type Outlook = readonly (readonly Coming[])[];

/**
 * What is looked ahead at: of a station under way all setups that are left, of the others the first. Later ones tell of
 * the body what the first does not, but of the datum hardly more.
 */
export function outlookOf(model: RoundModel): Outlook {
  const { steps } = model;
  const far: Coming[] = [];
  steps.forEach((pair, step) => {
    if (pair.first) far.push(coming(model, pair, step, false));
  });
  return steps.map((next, at) => {
    const ahead: Coming[] = [];
    if (!next.first) {
      for (let step = at; step < steps.length; step++) {
        const pair = steps[step];
        if (pair?.station !== next.station) break;
        ahead.push(coming(model, pair, step, true));
      }
    }
    for (const one of far) if (one.step >= at) ahead.push(one);
    return ahead;
  });
}

function coming(model: RoundModel, pair: PairModel, step: number, under: boolean): Coming {
  const { hasLeft, hasRight } = pair;
  const [ordinary] = pair.settings;
  const damaged = (pattern: number): number => (under ? 0 : chance(model, pair.station, pattern));
  const onLeft = damaged(ON_LEFT);
  const onRight = damaged(ON_RIGHT);
  const onBoth = damaged(ON_BOTH) + damaged(OPPOSED);
  const scatter = under ? 0 : componentAt(model.bodies, 0).varLeft;
  const none = Math.log(Math.max(LEAST, 1 - onLeft - onRight - onBoth)) + (ordinary?.logPrior ?? 0);
  const left = Math.log(onLeft + pair.wrong[0]);
  const right = Math.log(onRight + pair.wrong[1]);
  const both = Math.log(onBoth + pair.wrong[2]);
  const vL = (ordinary?.varLeft ?? 0) + scatter + pair.noise[0] + pair.commonNoise;
  const vR = (ordinary?.varRight ?? 0) + scatter + pair.noise[1] + pair.commonNoise;
  const c = (ordinary?.covariance ?? 0) + pair.commonNoise;
  const density = !hasLeft
    ? single(0, vR)
    : !hasRight
      ? single(0, vL)
      : Math.max(single(0, vL) + single(0, vR), double(0, 0, vL, vR, c));
  const numbers = new Float64Array(NUMBERS);
  numbers[LEVER_A] = pair.weights[0];
  numbers[LEVER_B] = pair.weights[1];
  numbers[Y_LEFT] = pair.y[0];
  numbers[Y_RIGHT] = pair.y[1];
  numbers[V_LEFT] = vL;
  numbers[V_RIGHT] = vR;
  numbers[C_BOTH] = c;
  numbers[NONE] = none;
  numbers[OFF_LEFT] = left;
  numbers[OFF_RIGHT] = right;
  numbers[OFF_BOTH] = both;
  numbers[MOST] = Math.log(Math.exp(none) + Math.exp(left) + Math.exp(right) + Math.exp(both)) + density;
  // The state adds to the variances, so no density can be above that of a fit without it.
  const broadLeft = single(0, vL + BROAD);
  const broadRight = single(0, vR + BROAD);
  const own = BROAD + BROAD_DIFFERENCE;
  numbers[MOST_LEFT] = left + broadLeft + single(0, vR);
  numbers[MOST_RIGHT] = right + broadRight + single(0, vL);
  numbers[MOST_BOTH] = both + Math.max(FREE_BOTH, double(0, 0, vL + own, vR + own, c + BROAD));
  numbers[FREE_LEFT] = FREE_SIDE - broadLeft;
  numbers[FREE_RIGHT] = FREE_SIDE - broadRight;
  const [zeroA, zeroB] = [pair.zeros[0] - 4, pair.zeros[1] - 4];
  return { step, under, hasLeft, hasRight, zeroA, zeroB, numbers };
}

const [ON_LEFT, ON_RIGHT, ON_BOTH, OPPOSED] = (['left', 'right', 'both', 'opposed'] as const).map((pattern) =>
  PATTERNS.indexOf(pattern),
) as [number, number, number, number];

function chance(model: RoundModel, station: number, pattern: number): number {
  let sum = 0;
  for (let impact = 0; impact < model.shares.length; impact++)
    sum += (model.shares[impact] ?? 0) * patternProbability(model, impact, station, pattern);
  return sum;
}

/** ln of the most that the setups looked ahead at can count together. */
export function mostOf(outlook: readonly Coming[]): number {
  let most = 0;
  for (const { numbers } of outlook) most += numbers[MOST] ?? 0;
  return most;
}
