import type { Component } from './components';
import { componentAt } from './explanation';

/** Where the numbers of one hypothesis stand in its row of `numbers`. */
export const LEFT = 0;
export const RIGHT = 1;
export const VAR_LEFT = 2;
export const VAR_RIGHT = 3;
export const COVARIANCE = 4;
export const LOG_PRIOR = 5;
/** ln of the prior weight of the row and those that follow; see `addTail`. */
export const LOG_TAIL = 6;
/** Numbers a row. */
export const WIDTH = 8;

/** Normal hypotheses laid out row by row in one array: the search reads them many thousand times a round. */
export interface NormalColumns {
  numbers: Float64Array;
}

/** Hypotheses about a setting, likeliest first. */
export interface SettingColumns extends NormalColumns {
  count: number;
  /** Index into the settings. */
  setting: Int16Array;
  /** In which way it is wrong (`way` of the component). */
  way: Uint8Array;
  /**
   * By row, the first from there on that may fit where the ordinary setting is out of reach: nowhere, on the left, on the
   * right, on both sides. A row that leaves a side as the ordinary setting has it is out of reach there as well.
   */
  next: readonly [Uint16Array, Uint16Array, Uint16Array, Uint16Array];
}

type Normal = Pick<Component, 'left' | 'right' | 'varLeft' | 'varRight' | 'covariance' | 'logPrior'>;

/** The hypotheses in their order; what follows each is left to `addTail`. */
export function normalNumbers(list: readonly Normal[]): Float64Array {
  const numbers = new Float64Array(WIDTH * list.length);
  list.forEach((normal, row) => put(numbers, row, normal));
  return numbers;
}

function put(numbers: Float64Array, row: number, normal: Normal): void {
  const at = WIDTH * row;
  numbers[at + LEFT] = normal.left;
  numbers[at + RIGHT] = normal.right;
  numbers[at + VAR_LEFT] = normal.varLeft;
  numbers[at + VAR_RIGHT] = normal.varRight;
  numbers[at + COVARIANCE] = normal.covariance;
  numbers[at + LOG_PRIOR] = normal.logPrior;
}

/** Fills in what the rows from `from` to `to` weigh from each of them on. */
export function addTail({ numbers }: NormalColumns, from: number, to: number): void {
  let sum = 0;
  for (let row = to - 1; row >= from; row--) {
    const at = WIDTH * row;
    sum += Math.exp(numbers[at + LOG_PRIOR] ?? -Infinity);
    numbers[at + LOG_TAIL] = Math.log(sum);
  }
}

/**
 * The ordinary setting comes first whatever its weight, since a lone reading meets it alone with fine bands.
 * @param like columns of the same slips under what was learned alike, by another hand: how often a hand is wrong
 * is the same factor for all ways of being wrong, so these have the same order, and tails that differ by a constant.
 */
export function settingColumns(settings: readonly Component[], like?: SettingColumns): SettingColumns {
  const count = settings.length;
  const same = like?.count === count ? like : undefined;
  const setting = same?.setting ?? likeliestFirst(settings);
  const numbers = new Float64Array(WIDTH * count);
  for (let row = 0; row < count; row++) put(numbers, row, componentAt(settings, setting[row] ?? 0));
  if (same) {
    shiftTail(numbers, same.numbers, count);
    return { count, setting, way: same.way, numbers, next: same.next };
  }
  const way = Uint8Array.from(setting, (index) => componentAt(settings, index).way);
  const next: SettingColumns['next'] = [
    nextRows(numbers, count, 0),
    nextRows(numbers, count, 1),
    nextRows(numbers, count, 2),
    nextRows(numbers, count, 3),
  ];
  const columns = { count, setting, way, numbers, next };
  addTail(columns, 0, count);
  return columns;
}

/** The columns of the same settings by another gauge, `like` those of the first. @param way of what is not the same. */
export function columnsOfGauge(
  settings: readonly Component[],
  like: SettingColumns,
  way: number,
): SettingColumns {
  const { count, setting, way: ways, next } = like;
  const numbers = like.numbers.slice();
  for (let row = 0; row < count; row++)
    if (ways[row] === way) put(numbers, row, componentAt(settings, setting[row] ?? 0));
  return { count, setting, way: ways, numbers, next };
}

/** `addTail` from the tails of rows that weigh the same but for one factor, all but the first. */
function shiftTail(numbers: Float64Array, like: Float64Array, count: number): void {
  const at = WIDTH + LOG_PRIOR;
  const shift = count > 1 ? (numbers[at] ?? 0) - (like[at] ?? 0) : 0;
  for (let row = 1; row < count; row++)
    numbers[WIDTH * row + LOG_TAIL] = (like[WIDTH * row + LOG_TAIL] ?? -Infinity) + shift;
  const rest = count > 1 ? Math.exp(numbers[WIDTH + LOG_TAIL] ?? -Infinity) : 0;
  numbers[LOG_TAIL] = Math.log(Math.exp(numbers[LOG_PRIOR] ?? -Infinity) + rest);
}

/** @param out sides on which the ordinary setting is out of reach: 1 left, 2 right. */
function nextRows(numbers: Float64Array, count: number, out: number): Uint16Array {
  const next = new Uint16Array(count + 1).fill(count);
  for (let row = count - 1; row >= 0; row--) {
    const at = WIDTH * row;
    const left = numbers[at + LEFT] !== numbers[LEFT] || numbers[at + VAR_LEFT] !== numbers[VAR_LEFT];
    const right = numbers[at + RIGHT] !== numbers[RIGHT] || numbers[at + VAR_RIGHT] !== numbers[VAR_RIGHT];
    const mayFit = (left || (out & 1) === 0) && (right || (out & 2) === 0);
    next[row] = mayFit ? row : (next[row + 1] ?? count);
  }
  return next;
}

/** By insertion: bands and slips come in runs of one prior, so little has to move. */
function likeliestFirst(settings: readonly Component[]): Int16Array {
  const order = new Int16Array(settings.length);
  for (let index = 1; index < settings.length; index++) {
    const prior = settings[index]?.logPrior ?? -Infinity;
    let row = index;
    while (row > 1 && (settings[order[row - 1] ?? 0]?.logPrior ?? -Infinity) < prior) {
      order[row] = order[row - 1] ?? 0;
      row--;
    }
    order[row] = index;
  }
  return order;
}
