import { normalDensity } from '@/lib/stats';
import { normalCdfByTable } from '@/lib/stats/distributions';
import { gaussLegendre } from '@/lib/stats/numeric/gauss-legendre';
import type { WorkingShop } from './types';

/** An error of a recorded deviation as a mixture of normals. */
export interface ErrorPart {
  chance: number;
  mean: number;
  sd: number;
}

/** P(called within), P(called within and truly within), P(out at the first hanging). */
export interface CallChances {
  called: number;
  both: number;
  firstOut: number;
}

/** The chances of one dimension as functions of how far its datum is off, mm. */
export interface CallTable {
  /** P(truly within). */
  within: number;
  at(datum: number): CallChances;
}

/** A datum further off than this puts every height out. */
const REACH = 14;
const STEP = 0.4;

/**
 * Works out a dimension's chances on a grid of datum errors. `first` holds for each of several gauges (chance of the
 * gauge, its error mixture); `second` is the error of a second hanging that counts where the first was out, gauge by
 * gauge, or null where none follows. Body and errors are independent; the body is integrated by Gauss–Legendre, between
 * grid points a parabola is drawn.
 */
export function callTable(
  tolerance: number,
  body: WorkingShop['body'],
  gauges: readonly { chance: number; first: ErrorPart[]; second: ErrorPart[] | null }[],
): CallTable {
  const nodes = bodyNodes(tolerance, body);
  const within = nodes.reduce((sum, { inside, weight }) => sum + (inside ? weight : 0), 0);
  const chances = gauges.map(({ chance, first, second }) => ({
    chance,
    first: outTable(tolerance, first),
    second: second === null ? null : outTable(tolerance, second),
  }));
  const called = new Float64Array(COUNT);
  const both = new Float64Array(COUNT);
  const firstOut = new Float64Array(COUNT);
  for (let i = 0; i < COUNT; i++) {
    const datum = -REACH + i * STEP;
    for (const { value, weight, inside } of nodes) {
      for (const { chance, first, second } of chances) {
        const out = outAt(first, value + datum);
        const share = weight * chance;
        const accepted = share * (second === null ? 1 - out : 1 - out * outAt(second, value + datum));
        called[i] = (called[i] ?? 0) + accepted;
        if (inside) both[i] = (both[i] ?? 0) + accepted;
        firstOut[i] = (firstOut[i] ?? 0) + share * out;
      }
    }
  }
  return {
    within,
    at(datum) {
      const place = (Math.max(-REACH, Math.min(REACH, datum)) + REACH) / STEP;
      const middle = Math.max(1, Math.min(COUNT - 2, Math.round(place)));
      const t = place - middle;
      return {
        called: between(called, middle, t),
        both: between(both, middle, t),
        firstOut: between(firstOut, middle, t),
      };
    },
  };
}

const COUNT = Math.round((2 * REACH) / STEP) + 1;

/** A chance `t` steps beside the middle of three points of a table, by the parabola through them. */
function between(table: Float64Array, middle: number, t: number): number {
  const a = table[middle - 1] ?? 0;
  const b = table[middle] ?? 0;
  const c = table[middle + 1] ?? 0;
  return Math.max(0, Math.min(1, b + (t * (c - a)) / 2 + (t * t * (a - 2 * b + c)) / 2));
}

const FINE = 0.2;

/** Further from the sheet than this a dimension is as good as surely called out, mm. */
const FAR = 30;

const FINE_COUNT = Math.round((2 * FAR) / FINE) + 1;

/** Tables by the errors that they are of: all heights of one tolerance share them. */
const made = new WeakMap<readonly ErrorPart[], Map<number, Float64Array>>();

/** P(called out) by where body and datum put a dimension, in steps of `FINE`. */
function outTable(tolerance: number, parts: readonly ErrorPart[]): Float64Array {
  const known = made.get(parts) ?? new Map<number, Float64Array>();
  made.set(parts, known);
  const there = known.get(tolerance);
  if (there) return there;
  const table = new Float64Array(FINE_COUNT);
  for (const { chance, mean, sd } of parts) {
    for (let i = 0; i < FINE_COUNT; i++) {
      const y = -FAR + i * FINE + mean;
      const out = normalCdfByTable((-tolerance - y) / sd) + normalCdfByTable((y - tolerance) / sd);
      table[i] = (table[i] ?? 0) + chance * out;
    }
  }
  known.set(tolerance, table);
  return table;
}

function outAt(table: Float64Array, at: number): number {
  const place = (Math.max(-FAR, Math.min(FAR, at)) + FAR) / FINE;
  const middle = Math.max(1, Math.min(FINE_COUNT - 2, Math.round(place)));
  return between(table, middle, place - middle);
}

interface BodyNode {
  value: number;
  weight: number;
  inside: boolean;
}

/** Where a body may be, with weights that add up to one, cut at the tolerance and reaching six of its sds. */
function bodyNodes(tolerance: number, { scatter, offShare, offScatter }: WorkingShop['body']): BodyNode[] {
  const nodes: BodyNode[] = [];
  for (const [share, sd] of [
    [1 - offShare, scatter],
    [offShare, offScatter],
  ] as const) {
    if (share === 0) continue;
    const end = Math.max(6 * sd, tolerance * 1.0001);
    const inner = Math.min(tolerance, 6 * sd);
    const panels: [number, number, boolean, number][] = [
      [-inner, inner, true, 10],
      [-end, -tolerance, false, 6],
      [tolerance, end, false, 6],
    ];
    for (const [from, to, inside, points] of panels) {
      const rule = gaussLegendre(points);
      const half = (to - from) / 2;
      rule.nodes.forEach((node, i) => {
        const value = from + half * (1 + node);
        const weight = share * (rule.weights[i] ?? 0) * half * (normalDensity(value / sd) / sd);
        nodes.push({ value, weight, inside });
      });
    }
  }
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0);
  return nodes.map((node) => ({ ...node, weight: node.weight / total }));
}
