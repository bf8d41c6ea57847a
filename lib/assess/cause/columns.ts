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
  /** Prior weight of each row and all that follow. */
  tail: Float64Array;
}

/** One body hypothesis with the settings it is met with: rows `from` to `to` of the columns. */
export interface Block {
  /** Index into the bodies; −1 for a later setup, whose body is known. */
  body: number;
  sides: number;
  left: number;
  right: number;
  varLeft: number;
  varRight: number;
  covariance: number;
  logPrior: number;
  from: number;
  to: number;
}

/** The ordinary setting comes first whatever its weight, since a lone reading meets it alone with fine bands. */
export function settingColumns(settings: readonly Component[]): SettingColumns {
  const order = settings.map((_, index) => index);
  order.sort((a, b) => (a === 0 ? -1 : b === 0 ? 1 : prior(settings, b) - prior(settings, a)));
  const count = settings.length;
  const columns: SettingColumns = {
    count,
    setting: Int16Array.from(order),
    left: new Float64Array(count),
    right: new Float64Array(count),
    varLeft: new Float64Array(count),
    varRight: new Float64Array(count),
    covariance: new Float64Array(count),
    logPrior: new Float64Array(count),
    tail: new Float64Array(count),
  };
  let sum = 0;
  for (let row = count - 1; row >= 0; row--) {
    const component = settings[order[row] ?? 0];
    if (!component) continue;
    columns.left[row] = component.left;
    columns.right[row] = component.right;
    columns.varLeft[row] = component.varLeft;
    columns.varRight[row] = component.varRight;
    columns.covariance[row] = component.covariance;
    columns.logPrior[row] = component.logPrior;
    sum += Math.exp(component.logPrior);
    columns.tail[row] = sum;
  }
  return columns;
}

const prior = (settings: readonly Component[], index: number): number =>
  settings[index]?.logPrior ?? -Infinity;

/** A later setup adds nothing to the body that its station's first setup put into the state. */
export function laterBlocks(settings: number): Block[] {
  return [
    {
      body: -1,
      sides: 0,
      left: 0,
      right: 0,
      varLeft: 0,
      varRight: 0,
      covariance: 0,
      logPrior: 0,
      from: 0,
      to: settings,
    },
  ];
}

/**
 * What the first setup at a station can meet: any body with an ordinary setting, a sound body with any setting,
 * and damage with any setting: in one wide band where this is the only setup (one reading cannot tell how two
 * unknown sizes share it), in all bands where others will tell, so that their order does not matter.
 */
export function firstBlocks(bodies: readonly Component[], settings: number, only: boolean): Block[] {
  return bodies.flatMap((place, body) => {
    const { sides, left, right, varLeft, varRight, covariance, logPrior } = place;
    const block = { body, sides, left, right, varLeft, varRight, covariance, logPrior };
    if (sides === 0) return [{ ...block, from: 0, to: settings }];
    if (place.width === 'fine') return [{ ...block, from: 0, to: only ? 1 : settings }];
    return only && place.width === 'wide' ? [{ ...block, from: 1, to: settings }] : [];
  });
}
