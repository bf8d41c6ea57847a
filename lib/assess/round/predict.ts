import { type Explanation, patternAt } from '../cause/explanation';
import type { JudgedRound } from '../cause/judge';
import type { Learned, TechnicianHand } from '../cause/learned';
import { damages, gaugeOf, type PairModel, type ZeroModel } from '../cause/model';
import type { Prediction } from './information';

/** An explanation that carries weight, and what it takes to be wrong. */
export interface Leading {
  weight: number;
  explanation: Explanation;
  group: string;
}

/** A new reading as a combination of entries of the state: places and their weights. */
interface Reading {
  pair: PairModel;
  side: 0 | 1;
  places: number[];
  weights: number[];
}

/**
 * The two new readings of each pair under each explanation: the body is the same, the setting is new and ordinary.
 * With `zero`, that zero gauge is hung anew first, and its own setting is new as well.
 */
export function predictions(
  judged: JudgedRound,
  leading: readonly Leading[],
  pairs: readonly PairModel[],
  hand: (pair: PairModel) => TechnicianHand,
  learned: Learned,
  zero: number | null,
): Prediction[] {
  const hung = zero === null ? undefined : judged.model.zeros[zero];
  const readings = pairs.flatMap((pair) => ([0, 1] as const).map((side) => readingOf(pair, side, hung)));
  const scatter = scatterOf(readings, hand, learned, hung);
  const found: Prediction[] = [];
  for (const { weight, explanation } of leading) {
    found.push({
      weight,
      mean: meanOf(readings, explanation),
      covariance: covarianceOf(readings, explanation, scatter),
    });
  }
  return found;
}

function meanOf(readings: readonly Reading[], { mean }: Explanation): Float64Array {
  const found = new Float64Array(readings.length);
  for (let i = 0; i < readings.length; i++) {
    const { places = [], weights = [] } = readings[i] ?? {};
    let sum = 0;
    for (let p = 0; p < places.length; p++) sum += (weights[p] ?? 0) * (mean[places[p] ?? 0] ?? 0);
    found[i] = sum;
  }
  return found;
}

function readingOf(pair: PairModel, side: 0 | 1, hung: ZeroModel | undefined): Reading {
  const places = [pair.body + side];
  const weights = [1];
  pair.zeros.forEach((at, z) => {
    // A zero gauge that is hung anew leaves the body at its station in the datum, and a new setting of its own.
    const place = hung !== undefined && hung.station === z ? 2 * z + side : at + side;
    const known = places.indexOf(place);
    const w = pair.weights[z] ?? 0;
    if (known >= 0) weights[known] = (weights[known] ?? 0) - w;
    else {
      places.push(place);
      weights.push(-w);
    }
  });
  return { pair, side, places, weights };
}

/** What new settings and readings scatter by, whatever the explanation; row-major. */
function scatterOf(
  readings: readonly Reading[],
  hand: (pair: PairModel) => TechnicianHand,
  learned: Learned,
  hung: ZeroModel | undefined,
): Float64Array {
  const n = readings.length;
  const scatter = new Float64Array(n * n);
  readings.forEach((a, i) => {
    const { setting, reading } = hand(a.pair);
    readings.forEach((b, j) => {
      const rho = a.side === b.side ? 1 : learned.common;
      let value = a.pair === b.pair ? rho * setting ** 2 : 0;
      if (hung !== undefined) {
        const lever = a.pair.weights[hung.station] * b.pair.weights[hung.station];
        value += rho * hung.hand.setting ** 2 * lever;
      }
      if (i === j) value += reading ** 2 + gaugeOf(learned, a.pair.pair.gauge).biasSe ** 2;
      scatter[i * n + j] = value;
    });
  });
  return scatter;
}

function covarianceOf(
  readings: readonly Reading[],
  { mean, covariance }: Explanation,
  scatter: Float64Array,
): Float64Array {
  const n = readings.length;
  const size = mean.length;
  const found = scatter.slice();
  for (let i = 0; i < n; i++) {
    const { places: here = [], weights: w = [] } = readings[i] ?? {};
    for (let j = 0; j <= i; j++) {
      const { places: there = [], weights: v = [] } = readings[j] ?? {};
      let value = 0;
      for (let p = 0; p < here.length; p++) {
        const row = (here[p] ?? 0) * size;
        for (let q = 0; q < there.length; q++)
          value += (w[p] ?? 0) * (v[q] ?? 0) * (covariance[row + (there[q] ?? 0)] ?? 0);
      }
      found[i * n + j] = (found[i * n + j] ?? 0) + value;
      if (i !== j) found[j * n + i] = (found[j * n + i] ?? 0) + value;
    }
  }
  return found;
}

/** Bits of a length not read yet: whether it is out tells whether a point at one of its ends is damaged. */
export function lengthBits(judged: JudgedRound, leading: Leading[], point: string, learned: Learned): number {
  const ends = point.split('-');
  const touches: [number, 0 | 1][] = [];
  judged.frame.stations.forEach((station, g) => {
    for (const side of [0, 1] as const) {
      const name = station.pairs[0]?.points[side] ?? null;
      if (name !== null && (ends.includes(name) || ends.includes(`${name}.${side === 0 ? 'L' : 'R'}`)))
        touches.push([g, side]);
    }
  });
  if (touches.length === 0) return 0;
  const { outWhenDamaged: p, outOtherwise: q } = learned.lengths;
  let damaged = 0;
  for (const { weight, explanation } of leading) {
    if (touches.some(([g, side]) => damages(patternAt(judged.model, explanation, g), side)))
      damaged += weight;
  }
  const binary = (x: number): number =>
    x <= 0 || x >= 1 ? 0 : -x * Math.log2(x) - (1 - x) * Math.log2(1 - x);
  return binary(damaged * p + (1 - damaged) * q) - damaged * binary(p) - (1 - damaged) * binary(q);
}
