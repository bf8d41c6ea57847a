import type { Component } from './components';
import { componentAt } from './explanation';

/** Normal hypotheses laid out in columns: the search reads them many thousand times a round. */
export interface NormalColumns {
  left: Float64Array;
  right: Float64Array;
  varLeft: Float64Array;
  varRight: Float64Array;
  covariance: Float64Array;
  logPrior: Float64Array;
  /** ln of the prior weight of each row and those that follow; see `addTail`. */
  logTail: Float64Array;
}

/** Hypotheses about a setting, likeliest first. */
export interface SettingColumns extends NormalColumns {
  count: number;
  /** Index into the settings. */
  setting: Int16Array;
}

type Normal = Pick<Component, 'left' | 'right' | 'varLeft' | 'varRight' | 'covariance' | 'logPrior'>;

/** The hypotheses in their order; what follows each is left to `addTail`. */
export function normalColumns(list: readonly Normal[]): NormalColumns {
  const column = () => new Float64Array(list.length);
  const columns: NormalColumns = {
    ...{ left: column(), right: column(), varLeft: column(), varRight: column() },
    ...{ covariance: column(), logPrior: column(), logTail: column() },
  };
  list.forEach(({ left, right, varLeft, varRight, covariance, logPrior }, row) => {
    columns.left[row] = left;
    columns.right[row] = right;
    columns.varLeft[row] = varLeft;
    columns.varRight[row] = varRight;
    columns.covariance[row] = covariance;
    columns.logPrior[row] = logPrior;
  });
  return columns;
}

/** Fills in what the rows from `from` to `to` weigh from each of them on. */
export function addTail({ logPrior, logTail }: NormalColumns, from: number, to: number): void {
  let sum = 0;
  for (let row = to - 1; row >= from; row--) {
    sum += Math.exp(logPrior[row] ?? -Infinity);
    logTail[row] = Math.log(sum);
  }
}

/** The ordinary setting comes first whatever its weight, since a lone reading meets it alone with fine bands. */
export function settingColumns(settings: readonly Component[]): SettingColumns {
  const count = settings.length;
  const setting = likeliestFirst(settings);
  const ordered = Array.from(setting, (index) => componentAt(settings, index));
  const columns = { count, setting, ...normalColumns(ordered) };
  addTail(columns, 0, count);
  return columns;
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
