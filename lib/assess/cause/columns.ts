import type { Component } from './components';

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
  /** Rows of one pattern of damage stand together, likeliest first. */
  groups: { pattern: number; from: number; to: number }[];
  /** Prior weight of each row and all that follow in its group. */
  tail: Float64Array;
}

interface Row {
  body: number;
  setting: number;
  pattern: number;
  setup: Component;
  place: Component | null;
  logPrior: number;
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
    groups: [],
    tail: new Float64Array(size),
  };
}

function lay(rows: Row[]): Columns {
  rows.sort((a, b) => a.pattern - b.pattern || b.logPrior - a.logPrior);
  const into = room(rows.length);
  for (const { body, setting, pattern, setup, place, logPrior } of rows) {
    const row = into.count++;
    into.body[row] = body;
    into.setting[row] = setting;
    into.pattern[row] = pattern;
    into.left[row] = setup.left + (place?.left ?? 0);
    into.right[row] = setup.right + (place?.right ?? 0);
    into.varLeft[row] = setup.varLeft + (place?.varLeft ?? 0);
    into.varRight[row] = setup.varRight + (place?.varRight ?? 0);
    into.covariance[row] = setup.covariance + (place?.covariance ?? 0);
    into.logPrior[row] = logPrior;
    const last = into.groups.at(-1);
    if (last && last.pattern === pattern) last.to = row + 1;
    else into.groups.push({ pattern, from: row, to: row + 1 });
  }
  for (const { from, to } of into.groups) {
    let sum = 0;
    for (let row = to - 1; row >= from; row--) {
      sum += Math.exp(into.logPrior[row] ?? 0);
      into.tail[row] = sum;
    }
  }
  return into;
}

/** What a later setup of a known body can be. */
export function settingColumns(settings: readonly Component[]): Columns {
  return lay(
    settings.map((setup, setting) => ({
      body: -1,
      setting,
      pattern: 0,
      setup,
      place: null,
      logPrior: setup.logPrior,
    })),
  );
}

/**
 * What the first setup at a station can be: any body with an ordinary setting, a sound body with any setting,
 * and damage with any setting: in one wide band where this is the only setup (one reading cannot tell how two
 * unknown sizes share it), in all bands where others will tell, so that their order does not matter.
 */
export function firstColumns(
  bodies: readonly Component[],
  settings: readonly Component[],
  only: boolean,
): Columns {
  const rows: Row[] = [];
  bodies.forEach((place, body) => {
    const pattern = place.sides;
    settings.forEach((setup, setting) => {
      if (place.pattern !== 'none' && place.width !== (setting === 0 || !only ? 'fine' : 'wide')) return;
      rows.push({ body, setting, pattern, setup, place, logPrior: setup.logPrior + place.logPrior });
    });
  });
  return lay(rows);
}
