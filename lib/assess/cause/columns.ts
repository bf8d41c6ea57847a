import type { Component } from './components';
import { PATTERNS } from './learned';

/** Hypotheses laid out in columns, since the search reads them many thousand times a round. */
export interface Columns {
  count: number;
  /** Index into the bodies (−1 for a later setup, whose body is known) and into the settings. */
  body: Int16Array;
  setting: Int16Array;
  pattern: Int8Array;
  left: Float64Array;
  right: Float64Array;
  varLeft: Float64Array;
  varRight: Float64Array;
  covariance: Float64Array;
  logPrior: Float64Array;
}

function room(size: number): Columns {
  return {
    count: 0,
    body: new Int16Array(size),
    setting: new Int16Array(size),
    pattern: new Int8Array(size),
    left: new Float64Array(size),
    right: new Float64Array(size),
    varLeft: new Float64Array(size),
    varRight: new Float64Array(size),
    covariance: new Float64Array(size),
    logPrior: new Float64Array(size),
  };
}

function add(
  into: Columns,
  body: number,
  setting: number,
  pattern: number,
  setup: Component,
  place: Component | null,
): void {
  const row = into.count++;
  into.body[row] = body;
  into.setting[row] = setting;
  into.pattern[row] = pattern;
  into.left[row] = setup.left + (place?.left ?? 0);
  into.right[row] = setup.right + (place?.right ?? 0);
  into.varLeft[row] = setup.varLeft + (place?.varLeft ?? 0);
  into.varRight[row] = setup.varRight + (place?.varRight ?? 0);
  into.covariance[row] = setup.covariance + (place?.covariance ?? 0);
  into.logPrior[row] = setup.logPrior + (place?.logPrior ?? 0);
}

/** What a later setup of a known body can be. */
export function settingColumns(settings: readonly Component[]): Columns {
  const columns = room(settings.length);
  settings.forEach((setting, index) => add(columns, -1, index, -1, setting, null));
  return columns;
}

/**
 * What the first setup at a station can be: any body with an ordinary setting, a sound body with any setting,
 * and damage in one wide band with any setting (a reading alone cannot tell how two unknown sizes share it).
 */
export function firstColumns(bodies: readonly Component[], settings: readonly Component[]): Columns {
  const columns = room(bodies.length * settings.length);
  bodies.forEach((body, b) => {
    const pattern = PATTERNS.indexOf(body.pattern);
    settings.forEach((setting, g) => {
      if (body.pattern === 'none' || body.width === (g === 0 ? 'fine' : 'wide'))
        add(columns, b, g, pattern, setting, body);
    });
  });
  return columns;
}
