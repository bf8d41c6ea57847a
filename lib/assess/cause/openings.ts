import type { Component } from './components';
import { componentAt } from './explanation';
import { nextKind, wayOf } from './kinds';
import { PATTERNS } from './learned';
import type { RoundModel } from './model';

/**
 * What is taken to be wrong at the zero stations, in rows of `slots`: a body hypothesis at each of the two, then a
 * setting for each zero setup.
 */
export interface Openings {
  count: number;
  slots: number;
  picks: Int16Array;
  /** ln prior, but for the probability of the patterns of damage. */
  logPrior: Float64Array;
  /** Number of the kind (`nextKind`). */
  kind: Int32Array;
  /** Patterns of the two bodies (`patternsAt`). */
  patterns: Uint8Array;
}

/** One number for the patterns of the bodies at the front and the rear zero station. */
export const patternsAt = (front: number, rear: number): number => front * PATTERNS.length + rear;

/** What `patternsAt` made one number of. */
export const frontAndRear = (patterns: number): [number, number] => [
  Math.floor(patterns / PATTERNS.length),
  patterns % PATTERNS.length,
];

/** What the openings of a round follow from, all of it laid out once for many rounds. */
type Sources = Pick<RoundModel, 'bodies' | 'possible'> & { settings: readonly (readonly Component[])[] };

/** Openings by the settings of the first zero setup: they go when those are laid out no more. */
const known = new WeakMap<readonly Component[], { sources: Sources; openings: Openings }[]>();
const MANY = 64;

export function openings(model: RoundModel): Openings {
  const { zeros, possible, bodies } = model;
  const first = zeros[0]?.settings ?? bodies;
  let list = known.get(first);
  if (!list) known.set(first, (list = []));
  const found = list.find(
    ({ sources }) =>
      sources.possible === possible &&
      sources.bodies === bodies &&
      sources.settings.length === zeros.length &&
      zeros.every(({ settings }, k) => settings === sources.settings[k]),
  );
  if (found) return found.openings;
  if (list.length >= MANY) list.length = 0;
  const sources: Sources = { possible, bodies, settings: zeros.map(({ settings }) => settings) };
  const made = { sources, openings: openingsOf(model) };
  list.push(made);
  return made.openings;
}

/**
 * Explanations of the zero stations, which have no reading of their own to judge them by: nothing wrong, one
 * thing wrong in fine bands, two things wrong in broad ones.
 */
function openingsOf(model: RoundModel): Openings {
  const slots = 2 + model.zeros.length;
  const fine: [slot: number, pick: number][] = [];
  const broad: typeof fine = [];
  model.zeros.forEach(({ settings, broadFrom }, k) => {
    for (let i = 1; i < settings.length; i++) (i < broadFrom ? fine : broad).push([2 + k, i]);
  });
  for (const z of [0, 1] as const) {
    model.bodies.forEach(({ sides, width }, i) => {
      if (sides === 0 || model.possible[sides] !== true || width === 'wide') return;
      (width === 'broad' ? broad : fine).push([z, i]);
    });
  }
  const pairs = broad.flatMap((first, i) =>
    broad.slice(i + 1).flatMap((second) => (first[0] === second[0] ? [] : [[first, second] as const])),
  );
  const count = 1 + fine.length + pairs.length;
  const picks = new Int16Array(count * slots);
  let row = slots;
  for (const [slot, pick] of fine) {
    picks[row + slot] = pick;
    row += slots;
  }
  for (const pair of pairs) {
    for (const [slot, pick] of pair) picks[row + slot] = pick;
    row += slots;
  }
  return { count, slots, picks, ...weighed(model, count, slots, picks) };
}

/** What each opening weighs before any reading, and of which kind it is. */
function weighed(
  model: RoundModel,
  count: number,
  slots: number,
  picks: Int16Array,
): Pick<Openings, 'logPrior' | 'kind' | 'patterns'> {
  const logPrior = new Float64Array(count);
  const kind = new Int32Array(count);
  const patterns = new Uint8Array(count);
  for (let index = 0; index < count; index++) {
    const row = index * slots;
    const front = componentAt(model.bodies, picks[row] ?? 0);
    const rear = componentAt(model.bodies, picks[row + 1] ?? 0);
    let sum = front.logPrior + rear.logPrior;
    let number = nextKind(nextKind(0, front.sides, 0), rear.sides, 0);
    for (let k = 0; k < model.zeros.length; k++) {
      const zero = model.zeros[k];
      if (!zero) break;
      const setting = componentAt(zero.settings, picks[row + 2 + k] ?? 0);
      sum += setting.logPrior;
      number = nextKind(number, 0, wayOf(setting));
    }
    logPrior[index] = sum;
    kind[index] = number;
    patterns[index] = patternsAt(front.sides, rear.sides);
  }
  return { logPrior, kind, patterns };
}
