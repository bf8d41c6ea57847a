import { requireLevel } from '@/lib/stats/arguments';
import { codeAt } from '@/lib/stats/linear-algebra/element';
import type { CodedFactor } from './build-model';
import type { Effects } from './effects';
import { estimate, type CellEstimates } from './estimate';

export interface CollapsedComponentsInput {
  /** One element a setup: number of readings (whole, at least 1), their mean, their sum of squares about it. */
  n: ArrayLike<number>;
  mean: ArrayLike<number>;
  ss: ArrayLike<number>;
  /** Random factors: a code from 0 for every setup. Codes that no setup has are allowed. */
  random: Readonly<Record<string, ArrayLike<number>>>;
  fixed?: Readonly<Record<string, ArrayLike<number>>>;
  /** Name of the component of the setups themselves; null leaves it out of the model. 'setup' unless given. */
  setup?: string | null;
  intervals?: 'profile' | 'none';
  level?: number;
}

/**
 * Effects by code: element k belongs to code k (for the setups: to setup k); null where there are none.
 * A code that no setup has is predicted as 0, with the component's sd as its standard error.
 */
export interface CollapsedComponents extends Omit<CellEstimates, 'random' | 'fixed'> {
  effects: Record<string, Effects | null>;
  fixed: Record<string, Effects | null>;
}

/**
 * `fitVarianceComponents` on setups that are collapsed already: the cost follows the number of setups and levels,
 * not of readings, and the setup effect is absorbed analytically.
 *
 * The model of a reading is intercept + fixed + Σ random + setup + residual. Where every setup holds one reading
 * only, setup and residual cannot be told apart: pass `setup: null`, and the residual is the sum of both.
 * RangeError as `fitVarianceComponents`, and for counts below 1, negative sums of squares or negative codes.
 */
export function fitCollapsedVarianceComponents(input: CollapsedComponentsInput): CollapsedComponents {
  const { level = 0.95, intervals = 'profile', setup = 'setup' } = input;
  requireLevel('The level of an interval', level);
  const n = input.n instanceof Float64Array ? input.n : copyLess(input.n, 0);
  const cells = n.length;
  requireSetups(n, input);
  const origin = input.mean[0] ?? 0;
  const random = codeAll(input.random, cells);
  const fixed = codeAll(input.fixed ?? {}, cells);
  const factors: CodedFactor[] = random.map(({ used }) => used);
  if (setup !== null) {
    if (random.some(({ name }) => name === setup))
      throw new RangeError(`Two random factors are called "${setup}".`);
    factors.push({ name: setup, codes: upTo(cells), levels: cells });
  }
  const found = estimate({
    n,
    mean: copyLess(input.mean, origin),
    origin,
    withinSs: total(input.ss),
    readings: total(n),
    random: factors,
    fixed: fixed.map(({ used }) => used),
    level: intervals === 'none' ? null : level,
  });
  const effects: Record<string, Effects | null> = {};
  for (const factor of random) {
    const sd = found.components.find(({ name }) => name === factor.name)?.sd ?? 0;
    effects[factor.name] = expand(found.random.get(factor.name) ?? null, factor.place, sd);
  }
  if (setup !== null) effects[setup] = found.random.get(setup) ?? null;
  return {
    ...found,
    effects,
    fixed: Object.fromEntries(
      fixed.map(({ name, place }) => [name, expand(found.fixed.get(name) ?? null, place, NaN)]),
    ),
  };
}

interface SparseFactor {
  name: string;
  /** The factor with only the codes that occur. */
  used: CodedFactor;
  /** Place of each code among those that occur; −1 for the others. */
  place: Int32Array;
}

function codeAll(factors: Readonly<Record<string, ArrayLike<number>>>, cells: number): SparseFactor[] {
  return Object.entries(factors).map(([name, list]) => {
    if (list.length !== cells) {
      throw new RangeError(
        `Factor "${name}" has ${list.length} codes for ${cells} setups; it needs one for each.`,
      );
    }
    const codes = new Int32Array(cells);
    let most = -1;
    for (let s = 0; s < cells; s++) {
      const code = list[s] ?? NaN;
      codes[s] = code;
      if (!(code >= 0) || codeAt(codes, s) !== code) {
        throw new RangeError(
          `Codes of "${name}" must be whole numbers from 0; number ${s + 1} is ${String(list[s])}.`,
        );
      }
      most = Math.max(most, code);
    }
    const place = new Int32Array(most + 1).fill(-1);
    for (let s = 0; s < cells; s++) place[codeAt(codes, s)] = 0;
    let levels = 0;
    for (let code = 0; code <= most; code++) if (codeAt(place, code) === 0) place[code] = levels++;
    return {
      name,
      used: { name, codes: levels === most + 1 ? codes : codes.map((code) => codeAt(place, code)), levels },
      place,
    };
  });
}

function expand(effects: Effects | null, place: Int32Array, sd: number): Effects | null {
  if (effects === null) return null;
  const each = (values: Float64Array, unused: number) =>
    Float64Array.from(place, (p) => (p < 0 ? unused : (values[p] ?? unused)));
  return { value: each(effects.value, 0), se: each(effects.se, sd) };
}

function requireSetups(n: Float64Array, { mean, ss }: CollapsedComponentsInput): void {
  if (mean.length !== n.length || ss.length !== n.length) {
    throw new RangeError(
      `Counts, means and sums of squares must have the same length; they have ${n.length}, ${mean.length} and ${ss.length}.`,
    );
  }
  for (let s = 0; s < n.length; s++) {
    const count = n[s] ?? 0;
    const square = ss[s] ?? NaN;
    if (!Number.isInteger(count) || count < 1) {
      throw new RangeError(
        `Every setup needs a whole number of readings, at least 1; setup ${s + 1} has ${count}.`,
      );
    }
    if (!Number.isFinite(mean[s])) {
      throw new RangeError(`Means must be finite numbers; that of setup ${s + 1} is ${String(mean[s])}.`);
    }
    if (!(square >= 0 && square < Infinity)) {
      throw new RangeError(`Sums of squares must be zero or more; that of setup ${s + 1} is ${square}.`);
    }
  }
}

function upTo(count: number): Int32Array {
  const result = new Int32Array(count);
  for (let i = 0; i < count; i++) result[i] = i;
  return result;
}

function copyLess(values: ArrayLike<number>, origin: number): Float64Array {
  const result = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) result[i] = (values[i] ?? NaN) - origin;
  return result;
}

function total(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] ?? 0;
  return sum;
}
