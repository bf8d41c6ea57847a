import { COVARIANCE, LEFT, LOG_PRIOR, LOG_TAIL, RIGHT, VAR_LEFT, VAR_RIGHT, WIDTH } from './columns';
import { double, single } from './densities';
import type { Expected } from './expected';
import type { Listed } from './listed';
import type { PairModel } from './model';
import type { Meeting } from './places';

const LOG_2PI = Math.log(2 * Math.PI);

/** So far below what is worth listing, in ln, a bound does for the density. */
const FAR_BELOW = 4;

/** `base` less the body at one place: residuals, variances, covariance. */
const placed = new Float64Array(5);

/** One setup under way, for all explanations of a beam. */
export interface Scan {
  list: Listed;
  pair: PairModel;
  /** The explanation under way: its readings, before any setting (and, at a new station, body). */
  base: Expected;
  /** ln of each pattern's probability at the station, by group of explanations. */
  patterns: Float64Array;
  /** A residual beyond so many variances, squared, is out of reach. */
  reach: number;
  depth: number;
}

/** ln of the highest density that two readings can have under these variances, both sides or one. */
function ceiling({ pair, base }: Scan): number {
  const setting = pair.hand.setting ** 2;
  const vL = base.vL + setting;
  const vR = base.vR + setting;
  if (!pair.hasLeft) return single(0, vR);
  if (!pair.hasRight) return single(0, vL);
  return double(0, 0, vL, vR, base.c + pair.common * setting);
}

/**
 * One explanation with each body that the setup can meet, and each setting that may go with it.
 * @param group where the patterns of its group begin.
 */
export function scan(of: Scan, index: number, logWeight: number, group: number): void {
  const { list, pair, base, patterns, reach, depth } = of;
  const { unlisted } = list;
  const places = pair.places.numbers;
  const isBoth = pair.hasLeft && pair.hasRight;
  const top = ceiling(of);
  /** What is not worth listing lies below. */
  let floor = list.best - depth;
  for (const meeting of pair.meetings) {
    const { sides, from, to, rowFrom, rowTo, lead, mass } = meeting;
    const start = logWeight + (pair.first ? (patterns[group + sides] ?? -Infinity) : 0);
    if (start === -Infinity) continue;
    const firstPrior = start + (places[WIDTH * from + LOG_PRIOR] ?? -Infinity);
    if (firstPrior + top + lead < floor) {
      unlisted.add(start + top + (places[WIDTH * from + LOG_TAIL] ?? -Infinity) + mass);
      continue;
    }
    if (isBoth && rowTo === rowFrom + 1) floor = scanPlaces(of, index, meeting, start, top, floor);
    else {
      for (let place = from; place < to; place++) {
        const at = WIDTH * place;
        const prior = start + (places[at + LOG_PRIOR] ?? -Infinity);
        if (prior + top + lead < floor) {
          unlisted.add(start + top + (places[at + LOG_TAIL] ?? -Infinity) + mass);
          break;
        }
        placed[0] = base.yL - (places[at + LEFT] ?? 0);
        placed[1] = base.yR - (places[at + RIGHT] ?? 0);
        placed[2] = base.vL + (places[at + VAR_LEFT] ?? 0);
        placed[3] = base.vR + (places[at + VAR_RIGHT] ?? 0);
        placed[4] = base.c + (places[at + COVARIANCE] ?? 0);
        floor = isBoth
          ? scanBoth(of, index, place, rowFrom, rowTo, prior, top, floor)
          : scanOne(of, index, place, rowFrom, rowTo, prior, top, floor);
      }
    }
    // Of the settings that were out of reach of a place, each has less than this.
    unlisted.add(start + top + (places[WIDTH * from + LOG_TAIL] ?? -Infinity) + mass - reach / 2);
  }
}

/** Both sides at all places of a meeting with its one setting. Returns below what it is not worth listing now. */
function scanPlaces(
  { list, pair, base, reach, depth }: Scan,
  index: number,
  { from, to, rowFrom, lead, mass }: Meeting,
  start: number,
  top: number,
  worth: number,
): number {
  const { unlisted } = list;
  const places = pair.places.numbers;
  const { numbers } = pair.columns;
  const row = WIDTH * rowFrom;
  const yL = base.yL - (numbers[row + LEFT] ?? 0);
  const yR = base.yR - (numbers[row + RIGHT] ?? 0);
  const vL = base.vL + (numbers[row + VAR_LEFT] ?? 0);
  const vR = base.vR + (numbers[row + VAR_RIGHT] ?? 0);
  const c = base.c + (numbers[row + COVARIANCE] ?? 0);
  const own = start + lead;
  let floor = worth;
  for (let place = from, at = WIDTH * from; place < to; place++, at += WIDTH) {
    const both = own + (places[at + LOG_PRIOR] ?? -Infinity);
    if (both + top < floor) {
      unlisted.add(start + top + (places[at + LOG_TAIL] ?? -Infinity) + mass);
      break;
    }
    const rL = yL - (places[at + LEFT] ?? 0);
    const wL = vL + (places[at + VAR_LEFT] ?? 0);
    if (isOut(rL, wL, reach)) continue;
    const rR = yR - (places[at + RIGHT] ?? 0);
    const wR = vR + (places[at + VAR_RIGHT] ?? 0);
    if (isOut(rR, wR, reach)) continue;
    const wC = c + (places[at + COVARIANCE] ?? 0);
    const weight = weighBoth(list, both, top, floor, rL, rR, wL, wR, wC);
    if (weight >= floor) {
      list.add(index, place, rowFrom, weight);
      floor = list.best - depth;
    }
  }
  return floor;
}

/** Both sides at one place (`placed`) with the settings in turn. Returns below what it is not worth listing now. */
function scanBoth(
  { list, pair, reach, depth }: Scan,
  index: number,
  place: number,
  rowFrom: number,
  rowTo: number,
  prior: number,
  top: number,
  worth: number,
): number {
  const { unlisted } = list;
  const { numbers, next } = pair.columns;
  const yL = placed[0] ?? 0;
  const yR = placed[1] ?? 0;
  const vL = placed[2] ?? 0;
  const vR = placed[3] ?? 0;
  const c = placed[4] ?? 0;
  const [isOutLeft, isOutRight] = [
    isOut(yL - (numbers[LEFT] ?? 0), vL + (numbers[VAR_LEFT] ?? 0), reach),
    isOut(yR - (numbers[RIGHT] ?? 0), vR + (numbers[VAR_RIGHT] ?? 0), reach),
  ];
  const rows = isOutLeft ? (isOutRight ? next[3] : next[1]) : isOutRight ? next[2] : next[0];
  let floor = worth;
  for (let row = rows[rowFrom] ?? rowTo; row < rowTo; row = rows[row + 1] ?? rowTo) {
    const at = WIDTH * row;
    const both = prior + (numbers[at + LOG_PRIOR] ?? 0);
    if (both + top < floor) {
      unlisted.add(prior + top + (numbers[at + LOG_TAIL] ?? 0));
      break;
    }
    const rL = yL - (numbers[at + LEFT] ?? 0);
    const wL = vL + (numbers[at + VAR_LEFT] ?? 0);
    if (isOut(rL, wL, reach)) continue;
    const rR = yR - (numbers[at + RIGHT] ?? 0);
    const wR = vR + (numbers[at + VAR_RIGHT] ?? 0);
    if (isOut(rR, wR, reach)) continue;
    const wC = c + (numbers[at + COVARIANCE] ?? 0);
    const weight = weighBoth(list, both, top, floor, rL, rR, wL, wR, wC);
    if (weight >= floor) {
      list.add(index, place, row, weight);
      floor = list.best - depth;
    }
  }
  return floor;
}

/**
 * ln weight of a hypothesis with prior `both` by two residuals with these variances and this covariance. What is not
 * worth listing, below `floor`, is counted as not listed; far below, a bound does for its density.
 */
function weighBoth(
  { unlisted }: Listed,
  both: number,
  top: number,
  floor: number,
  rL: number,
  rR: number,
  wL: number,
  wR: number,
  wC: number,
): number {
  const det = wL * wR - wC * wC;
  const half = (0.5 * (wR * rL * rL - 2 * wC * rL * rR + wL * rR * rR)) / det;
  const bound = both + top - half;
  const weight = bound < floor - FAR_BELOW ? bound : both + (-LOG_2PI - 0.5 * Math.log(det) - half);
  if (weight < floor) unlisted.add(weight);
  return weight;
}

const isOut = (residual: number, variance: number, reach: number): boolean =>
  residual * residual > reach * variance;

/** The same where one side was read. */
function scanOne(
  { list, pair, reach, depth }: Scan,
  index: number,
  place: number,
  rowFrom: number,
  rowTo: number,
  prior: number,
  top: number,
  worth: number,
): number {
  const { unlisted } = list;
  const { hasLeft, columns } = pair;
  const { numbers } = columns;
  const y = (hasLeft ? placed[0] : placed[1]) ?? 0;
  const v = (hasLeft ? placed[2] : placed[3]) ?? 0;
  const mean = hasLeft ? LEFT : RIGHT;
  const variance = hasLeft ? VAR_LEFT : VAR_RIGHT;
  let floor = worth;
  for (let row = rowFrom, at = WIDTH * rowFrom; row < rowTo; row++, at += WIDTH) {
    const both = prior + (numbers[at + LOG_PRIOR] ?? 0);
    if (both + top < floor) {
      unlisted.add(prior + top + (numbers[at + LOG_TAIL] ?? 0));
      break;
    }
    const r = y - (numbers[at + mean] ?? 0);
    const w = v + (numbers[at + variance] ?? 0);
    if (isOut(r, w, reach)) continue;
    const weight = both + single(r, w);
    if (weight < floor) unlisted.add(weight);
    else {
      list.add(index, place, row, weight);
      floor = list.best - depth;
    }
  }
  return floor;
}
