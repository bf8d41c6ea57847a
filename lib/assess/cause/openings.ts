import { componentAt } from './explanation';
import { nextKind } from './kinds';
import { PATTERNS } from './learned';
import type { RoundModel } from './model';
import type { SettingShape } from './settings';

/**
 * What is taken to be wrong at the zero stations, in rows of `slots`: a body hypothesis at each of the two, then a
 * setting for each zero setup.
 */
export interface Openings {
  count: number;
  slots: number;
  picks: Int16Array;
  /** Number of the kind (`nextKind`). */
  kind: Int32Array;
  /** Patterns of the two bodies (`patternsAt`). */
  patterns: Uint8Array;
}

/** One number for the patterns of the bodies at the front and the rear zero station. */
const patternsAt = (front: number, rear: number): number => front * PATTERNS.length + rear;

/** What `patternsAt` made one number of. */
export const frontAndRear = (patterns: number): [number, number] => [
  Math.floor(patterns / PATTERNS.length),
  patterns % PATTERNS.length,
];

/** What the openings of a round depend on. */
interface Shape {
  bodies: number;
  possible: readonly boolean[];
  settings: readonly SettingShape[];
}

/** Of the last few rounds: most of a shop's rounds have as many hypotheses about their zero stations. */
const lately: { shape: Shape; openings: Openings }[] = [];
const FEW = 32;

export function openings(model: RoundModel): Openings {
  const { zeros, possible, bodies } = model;
  let at = 0;
  for (; at < lately.length; at++) {
    const shape = lately[at]?.shape;
    if (shape?.possible !== possible || shape.bodies !== bodies.length) continue;
    if (shape.settings.length !== zeros.length) continue;
    let k = 0;
    while (k < zeros.length && shape.settings[k] === zeros[k]?.shape) k++;
    if (k === zeros.length) break;
  }
  const known = lately[at];
  if (known) {
    if (at > 0) lately.unshift(...lately.splice(at, 1));
    return known.openings;
  }
  const settings: SettingShape[] = [];
  for (const zero of zeros) settings.push(zero.shape);
  const shape: Shape = { bodies: bodies.length, possible, settings };
  const made = { shape, openings: layOut(model) };
  lately.unshift(made);
  if (lately.length > FEW) lately.pop();
  return made.openings;
}

/** ln prior of an opening, but for the probability of the patterns of damage. */
export function logPriorOf(
  { bodyPriors, zeros }: RoundModel,
  { slots, picks }: Openings,
  index: number,
): number {
  const row = index * slots;
  let sum = (bodyPriors[picks[row] ?? 0] ?? 0) + (bodyPriors[picks[row + 1] ?? 0] ?? 0);
  for (let k = 0; k < zeros.length; k++) sum += zeros[k]?.logPriors[picks[row + 2 + k] ?? 0] ?? 0;
  return sum;
}

/**
 * Explanations of the zero stations, which have no reading of their own to judge them by: nothing wrong, one
 * thing wrong in fine bands, two things wrong in broad ones.
 */
function layOut(model: RoundModel): Openings {
  const slots = 2 + model.zeros.length;
  const fine: [slot: number, pick: number][] = [];
  const broad: typeof fine = [];
  model.zeros.forEach(({ settings, shape: { broadFrom } }, k) => {
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
  const kind = new Int32Array(count);
  const patterns = new Uint8Array(count);
  for (let index = 0; index < count; index++) {
    const start = index * slots;
    const front = componentAt(model.bodies, picks[start] ?? 0).sides;
    const rear = componentAt(model.bodies, picks[start + 1] ?? 0).sides;
    let number = nextKind(nextKind(0, front, 0), rear, 0);
    model.zeros.forEach(({ shape: { ways } }, k) => {
      number = nextKind(number, 0, ways[picks[start + 2 + k] ?? 0] ?? 0);
    });
    kind[index] = number;
    patterns[index] = patternsAt(front, rear);
  }
  return { count, slots, picks, kind, patterns };
}
