import { normalCdf, normalDensity } from '@/lib/stats';
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
  const count = Math.round((2 * REACH) / STEP) + 1;
  const chances = gauges.map(({ chance, first, second }) => ({
    chance,
    first: outTable(tolerance, first),
    second: second === null ? null : outTable(tolerance, second),
  }));
  const rows = Array.from({ length: count }, (_, i) => {
    const datum = -REACH + i * STEP;
    const row: CallChances = { called: 0, both: 0, firstOut: 0 };
    for (const { value, weight, inside } of nodes) {
      for (const { chance, first, second } of chances) {
        const out = first(value + datum);
        const called = second === null ? 1 - out : 1 - out * second(value + datum);
        const share = weight * chance;
        row.called += share * called;
        if (inside) row.both += share * called;
        row.firstOut += share * out;
      }
    }
    return row;
  });
  return {
    within,
    at(datum) {
      const place = (Math.max(-REACH, Math.min(REACH, datum)) + REACH) / STEP;
      const middle = Math.max(1, Math.min(count - 2, Math.round(place)));
      const t = place - middle;
      const [a, b, c] = [rows[middle - 1], rows[middle], rows[middle + 1]];
      if (!a || !b || !c) throw new RangeError('The datum lies outside the table.');
      const between = (of: (row: CallChances) => number) =>
        Math.max(
          0,
          Math.min(1, of(b) + (t * (of(c) - of(a))) / 2 + (t * t * (of(a) - 2 * of(b) + of(c))) / 2),
        );
      return {
        called: between(({ called }) => called),
        both: between(({ both }) => both),
        firstOut: between(({ firstOut }) => firstOut),
      };
    },
  };
}

const FINE = 0.2;

/** Further from the sheet than this a dimension is as good as surely called out, mm. */
const FAR = 30;

/** P(called out) by where body and datum put a dimension: tabulated, with a parabola between the points. */
function outTable(tolerance: number, parts: readonly ErrorPart[]): (at: number) => number {
  const count = Math.round((2 * FAR) / FINE) + 1;
  const table = Float64Array.from({ length: count }, (_, i) => outChance(-FAR + i * FINE, tolerance, parts));
  return (at) => {
    const place = (Math.max(-FAR, Math.min(FAR, at)) + FAR) / FINE;
    const middle = Math.max(1, Math.min(count - 2, Math.round(place)));
    const t = place - middle;
    const [a = 0, b = 0, c = 0] = [table[middle - 1], table[middle], table[middle + 1]];
    return Math.max(0, Math.min(1, b + (t * (c - a)) / 2 + (t * t * (a - 2 * b + c)) / 2));
  };
}

function outChance(at: number, tolerance: number, parts: readonly ErrorPart[]): number {
  return parts.reduce((sum, { chance, mean, sd }) => {
    const y = at + mean;
    return sum + chance * (normalCdf((-tolerance - y) / sd) + normalCdf((y - tolerance) / sd));
  }, 0);
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
