import { COVARIANCE, LEFT, LOG_PRIOR, LOG_TAIL, RIGHT, VAR_LEFT, VAR_RIGHT, WIDTH } from './columns';
import { type Expected, nothingExpected } from './expected';
import type { Listed } from './listed';
import type { PairModel } from './model';

const LOG_2PI = Math.log(2 * Math.PI);

/** So far below what is worth listing, in ln, a bound does for the density. */
const FAR_BELOW = 4;

/** `base` less the body at one place. */
const placed = nothingExpected();

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
  if (!pair.hasLeft) return -0.5 * (LOG_2PI + Math.log(vR));
  if (!pair.hasRight) return -0.5 * (LOG_2PI + Math.log(vL));
  const c = base.c + pair.common * setting;
  return -LOG_2PI - 0.5 * Math.log(vL * vR - c * c);
}

/**
 * One explanation with each body that the setup can meet, and each setting that may go with it.
 * @param group where the patterns of its group begin.
 */
export function scan(of: Scan, index: number, logWeight: number, group: number): void {
  const { list, pair, base, patterns, reach, depth } = of;
  const { unlisted } = list;
  const places = pair.places.numbers;
  const top = ceiling(of);
  /** What is not worth listing lies below. */
  let floor = list.best - depth;
  for (const { sides, from, to, rowFrom, rowTo, lead, mass } of pair.meetings) {
    const start = logWeight + (pair.first ? (patterns[group + sides] ?? -Infinity) : 0);
    if (start === -Infinity) continue;
    let place = from;
    for (; place < to; place++) {
      const at = WIDTH * place;
      const prior = start + (places[at + LOG_PRIOR] ?? -Infinity);
      if (prior + top + lead < floor) {
        unlisted.add(start + top + (places[at + LOG_TAIL] ?? -Infinity) + mass);
        break;
      }
      placed.yL = base.yL - (places[at + LEFT] ?? 0);
      placed.yR = base.yR - (places[at + RIGHT] ?? 0);
      placed.vL = base.vL + (places[at + VAR_LEFT] ?? 0);
      placed.vR = base.vR + (places[at + VAR_RIGHT] ?? 0);
      placed.c = base.c + (places[at + COVARIANCE] ?? 0);
      if (pair.hasLeft && pair.hasRight)
        floor = scanBoth(of, index, place, rowFrom, rowTo, prior, top, floor);
      else floor = scanOne(of, index, place, rowFrom, rowTo, prior, top, floor);
    }
    // Of the settings that were out of reach of a place, each has less than this.
    if (place > from)
      unlisted.add(start + top + (places[WIDTH * from + LOG_TAIL] ?? -Infinity) + mass - reach / 2);
  }
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
  const { numbers } = pair.columns;
  const { yL, yR, vL, vR, c } = placed;
  let floor = worth;
  for (let row = rowFrom, at = WIDTH * rowFrom; row < rowTo; row++, at += WIDTH) {
    const both = prior + (numbers[at + LOG_PRIOR] ?? 0);
    if (both + top < floor) {
      unlisted.add(prior + top + (numbers[at + LOG_TAIL] ?? 0));
      break;
    }
    const rL = yL - (numbers[at + LEFT] ?? 0);
    const wL = vL + (numbers[at + VAR_LEFT] ?? 0);
    if (rL * rL > reach * wL) continue;
    const rR = yR - (numbers[at + RIGHT] ?? 0);
    const wR = vR + (numbers[at + VAR_RIGHT] ?? 0);
    if (rR * rR > reach * wR) continue;
    const wC = c + (numbers[at + COVARIANCE] ?? 0);
    const det = wL * wR - wC * wC;
    const half = (0.5 * (wR * rL * rL - 2 * wC * rL * rR + wL * rR * rR)) / det;
    const bound = both + top - half;
    if (bound < floor - FAR_BELOW) {
      unlisted.add(bound);
      continue;
    }
    const weight = both + (-LOG_2PI - 0.5 * Math.log(det) - half);
    if (weight < floor) unlisted.add(weight);
    else {
      list.add(index, place, row, weight);
      floor = list.best - depth;
    }
  }
  return floor;
}

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
  const y = hasLeft ? placed.yL : placed.yR;
  const v = hasLeft ? placed.vL : placed.vR;
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
    if (r * r > reach * w) continue;
    const weight = both - 0.5 * (LOG_2PI + Math.log(w) + (r * r) / w);
    if (weight < floor) unlisted.add(weight);
    else {
      list.add(index, place, row, weight);
      floor = list.best - depth;
    }
  }
  return floor;
}
