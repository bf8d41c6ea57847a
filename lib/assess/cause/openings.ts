import { type Beam, zeroPicks } from './beam';
import type { Component } from './components';
import { componentAt, type Explanation, patternProbability } from './explanation';
import { nextKind, wayOf } from './kinds';
import { PATTERNS } from './learned';
import { damages, type RoundModel } from './model';

/**
 * What is taken to be wrong at the zero stations, in rows of `slots`: a body hypothesis at each of the two, then a
 * setting for each zero setup.
 */
interface Openings {
  count: number;
  slots: number;
  picks: Int16Array;
}

/** Of the last few rounds: most of a shop's rounds have as many hypotheses about their zero stations. */
const lately: { key: string; openings: Openings }[] = [];
const FEW = 16;

function openings(model: RoundModel): Openings {
  const possible = ([0, 1] as const).map((z) => PATTERNS.map((_, sides) => canBe(model, z, sides)));
  const counts = model.zeros.map(({ settings, broadFrom }) => `${broadFrom}/${settings.length}`);
  const key = [model.bodies.length, ...possible.flat(), ...counts].join(' ');
  const at = lately.findIndex((one) => one.key === key);
  const known = lately[at];
  if (known) {
    if (at > 0) lately.unshift(...lately.splice(at, 1));
    return known.openings;
  }
  const made = { key, openings: openingsOf(model, possible) };
  lately.unshift(made);
  if (lately.length > FEW) lately.pop();
  return made.openings;
}

/**
 * Explanations of the zero stations, which have no reading of their own to judge them by: nothing wrong, one
 * thing wrong in fine bands, two things wrong in broad ones.
 * @param possible whether a body can have a pattern, by zero station.
 */
function openingsOf(model: RoundModel, possible: readonly (readonly boolean[])[]): Openings {
  const slots = 2 + model.zeros.length;
  const fine: [slot: number, pick: number][] = [];
  const broad: typeof fine = [];
  model.zeros.forEach(({ settings, broadFrom }, k) => {
    for (let i = 1; i < settings.length; i++) (i < broadFrom ? fine : broad).push([2 + k, i]);
  });
  for (const z of [0, 1] as const) {
    model.bodies.forEach(({ sides, width }, i) => {
      if (sides === 0 || possible[z]?.[sides] !== true || width === 'wide') return;
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
  return { count, slots, picks };
}

/** Whether any impact leaves a body like this at a zero station. */
const canBe = (model: RoundModel, station: 0 | 1, sides: number): boolean =>
  model.shares.some((share, c) => share * patternProbability(model, c, station, sides) > 0);

/** Room for one explanation before anything is known of it. */
export function emptyExplanation(model: RoundModel): Explanation {
  return {
    logWeight: 0,
    mean: new Float64Array(model.size),
    covariance: new Float64Array(model.size * model.size),
    impacts: new Float64Array(model.shares.length),
    bodies: new Int16Array(model.frame.stations.length),
    zeroSettings: new Int16Array(model.zeros.length),
    settings: new Int16Array(model.steps.length),
  };
}

/** What is taken to be wrong at the zero stations, as a whole explanation names it. */
type Opening = Pick<Explanation, 'bodies' | 'zeroSettings'>;

/** Puts into a fresh state what an opening says before any reading away from the zero stations. */
export function open(
  model: RoundModel,
  opening: Opening,
  { mean, covariance }: Pick<Explanation, 'mean' | 'covariance'>,
): void {
  const n = model.size;
  for (const z of [0, 1] as const) {
    const body = componentAt(model.bodies, opening.bodies[z] ?? 0);
    const at = 2 * z;
    mean[at] = body.left;
    mean[at + 1] = body.right;
    put(covariance, n, at, at, body.varLeft);
    put(covariance, n, at + 1, at + 1, body.varRight);
    put(covariance, n, at, at + 1, body.covariance);
  }
  for (let k = 0; k < model.zeros.length; k++) {
    const zero = model.zeros[k];
    if (!zero) break;
    const setting = componentAt(zero.settings, opening.zeroSettings[k] ?? 0);
    const body = componentAt(model.bodies, opening.bodies[zero.station] ?? 0);
    const at = zero.error;
    mean[at] = body.left + setting.left;
    mean[at + 1] = body.right + setting.right;
    put(covariance, n, at, at, body.varLeft + setting.varLeft);
    put(covariance, n, at + 1, at + 1, body.varRight + setting.varRight);
    put(covariance, n, at, at + 1, body.covariance + setting.covariance);
    // A zero setup's error contains the body, which the other setups at this station share.
    share(covariance, n, at, 2 * zero.station, body);
    for (let j = 0; j < k; j++) {
      const earlier = model.zeros[j];
      if (earlier && earlier.station === zero.station) share(covariance, n, at, earlier.error, body);
    }
  }
}

/** Fills a beam with all openings of a round: of each the datum errors, as `open` has them in the whole state. */
export function openBeam(model: RoundModel, beam: Beam): void {
  const { count, slots, picks: from } = openings(model);
  beam.begin(model, count);
  const { size: n, mean, covariance, pickCount, picks } = beam;
  mean.fill(0, 0, n * count);
  covariance.fill(0, 0, n * n * count);
  picks.fill(0, 0, pickCount * count);
  const groups = new Groups(model, beam);
  for (let index = 0; index < count; index++) {
    const m = index * n;
    const C = index * n * n;
    const pick = index * pickCount;
    const row = index * slots;
    const front = componentAt(model.bodies, from[row] ?? 0);
    const rear = componentAt(model.bodies, from[row + 1] ?? 0);
    picks[pick] = from[row] ?? 0;
    picks[pick + 1] = from[row + 1] ?? 0;
    let logWeight = front.logPrior + rear.logPrior;
    let kind = nextKind(nextKind(0, front.sides, 0), rear.sides, 0);
    for (let k = 0; k < model.zeros.length; k++) {
      const zero = model.zeros[k];
      if (!zero) break;
      const own = from[row + 2 + k] ?? 0;
      const setting = componentAt(zero.settings, own);
      const body = zero.station === 0 ? front : rear;
      picks[pick + zeroPicks(model) + k] = own;
      logWeight += setting.logPrior;
      kind = nextKind(kind, 0, wayOf(setting));
      const at = 2 * k;
      mean[m + at] = body.left + setting.left;
      mean[m + at + 1] = body.right + setting.right;
      put(covariance, n, at, at, body.varLeft + setting.varLeft, C);
      put(covariance, n, at + 1, at + 1, body.varRight + setting.varRight, C);
      put(covariance, n, at, at + 1, body.covariance + setting.covariance, C);
      for (let j = 0; j < k; j++) {
        if (model.zeros[j]?.station === zero.station) share(covariance, n, at, 2 * j, body, C);
      }
    }
    const group = groups.of(front.sides, rear.sides, index);
    beam.group[index] = group;
    beam.kind[index] = kind;
    beam.outlook[index] = 0;
    beam.logWeight[index] = groups.weighed(logWeight, group);
  }
}

/** The groups of a round's openings, by the patterns of damage at the two zero stations. */
class Groups {
  readonly #model: RoundModel;
  readonly #beam: Beam;
  readonly #known = new Int32Array(PATTERNS.length ** 2).fill(-1);
  /** By group: what ln weights gain from the patterns' probability and from each length that ends are settled of. */
  readonly #gains: number[][] = [];

  constructor(model: RoundModel, beam: Beam) {
    this.#model = model;
    this.#beam = beam;
  }

  of(front: number, rear: number, index: number): number {
    const key = front * PATTERNS.length + rear;
    const known = this.#known[key] ?? -1;
    if (known >= 0) return known;
    const group = this.#beam.beginGroup(index);
    this.#known[key] = group;
    this.#gains.push([Math.log(this.#impacts(front, rear, group)), ...this.#lengths(front, rear)]);
    return group;
  }

  /** Added one by one, so that the last digit does not hang on the grouping. */
  weighed(logWeight: number, group: number): number {
    let sum = logWeight;
    for (const gain of this.#gains[group] ?? []) sum += gain;
    return sum;
  }

  /** Probability of both patterns; writes the probabilities of the impacts given them. */
  #impacts(front: number, rear: number, group: number): number {
    const { impacts, impactCount } = this.#beam;
    const at = group * impactCount;
    let total = 0;
    for (let c = 0; c < impactCount; c++) {
      const value =
        (this.#model.shares[c] ?? 0) *
        patternProbability(this.#model, c, 0, front) *
        patternProbability(this.#model, c, 1, rear);
      impacts[at + c] = value;
      total += value;
    }
    for (let c = 0; c < impactCount; c++) impacts[at + c] = (impacts[at + c] ?? 0) / total;
    return total;
  }

  #lengths(front: number, rear: number): number[] {
    return this.#model.lengths.flatMap(({ last, ends, damaged, sound }) => {
      if (last > 1) return [];
      return ends.some(([station, side]) => damages(station === 0 ? front : rear, side)) ? damaged : sound;
    });
  }
}

/** Writes both triangles of a matrix that starts at `from`. */
function put(matrix: Float64Array, n: number, row: number, column: number, value: number, from = 0): void {
  matrix[from + row * n + column] = value;
  matrix[from + column * n + row] = value;
}

function share(matrix: Float64Array, n: number, at: number, other: number, body: Component, from = 0): void {
  put(matrix, n, at, other, body.varLeft, from);
  put(matrix, n, at + 1, other + 1, body.varRight, from);
  put(matrix, n, at, other + 1, body.covariance, from);
  put(matrix, n, at + 1, other, body.covariance, from);
}
