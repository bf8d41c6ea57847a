import type { Component } from './components';

/** Hypotheses about a setting laid out in columns, likeliest first: the search reads them many thousand times a round. */
export interface SettingColumns {
  count: number;
  /** Index into the settings. */
  setting: Int16Array;
  left: Float64Array;
  right: Float64Array;
  varLeft: Float64Array;
  varRight: Float64Array;
  covariance: Float64Array;
  logPrior: Float64Array;
  /** ln of the prior weight of each row and all that follow. */
  logTail: Float64Array;
}

/** The ordinary setting comes first whatever its weight, since a lone reading meets it alone with fine bands. */
export function settingColumns(settings: readonly Component[]): SettingColumns {
  const count = settings.length;
  const setting = likeliestFirst(settings);
  const columns: SettingColumns = {
    count,
    setting,
    left: new Float64Array(count),
    right: new Float64Array(count),
    varLeft: new Float64Array(count),
    varRight: new Float64Array(count),
    covariance: new Float64Array(count),
    logPrior: new Float64Array(count),
    logTail: new Float64Array(count),
  };
  let sum = 0;
  for (let row = count - 1; row >= 0; row--) {
    const component = settings[setting[row] ?? 0];
    if (!component) continue;
    columns.left[row] = component.left;
    columns.right[row] = component.right;
    columns.varLeft[row] = component.varLeft;
    columns.varRight[row] = component.varRight;
    columns.covariance[row] = component.covariance;
    columns.logPrior[row] = component.logPrior;
    sum += Math.exp(component.logPrior);
    columns.logTail[row] = Math.log(sum);
  }
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
