import { type Explanation, patternAt } from '../cause/explanation';
import type { JudgedRound } from '../cause/judge';
import type { Learned, TechnicianHand } from '../cause/learned';
import { damages, gaugeOf, type PairModel } from '../cause/model';
import type { Prediction } from './information';

/** An explanation that carries weight, and what it takes to be wrong. */
export interface Leading {
  weight: number;
  explanation: Explanation;
  group: string;
}

/**
 * The two new readings of each pair under an explanation: the body is the same, the setting is new and ordinary.
 * With `zero`, that zero gauge is hung anew first, and its own setting is new as well.
 */
export function prediction(
  judged: JudgedRound,
  item: Explanation,
  weight: number,
  pairs: PairModel[],
  hand: (pair: PairModel) => TechnicianHand,
  learned: Learned,
  zero: number | null,
): Prediction {
  const hangers = pairs.flatMap((pair) => [0, 1].map((side) => ({ pair, side })));
  const rows = hangers.map(({ pair, side }) => {
    const c = new Map<number, number>([[pair.body + side, 1]]);
    pair.zeros.forEach((at, z) => {
      const w = pair.weights[z] ?? 0;
      const hung = zero === null ? null : judged.model.zeros[zero];
      // A zero gauge that is hung anew leaves the body at its station in the datum, and a new setting of its own.
      const place = hung && hung.station === z ? 2 * z + side : at + side;
      c.set(place, (c.get(place) ?? 0) - w);
    });
    return { pair, side, combination: c };
  });
  const n = item.mean.length;
  const mean = rows.map(({ combination }) =>
    [...combination].reduce((sum, [i, w]) => sum + w * (item.mean[i] ?? 0), 0),
  );
  const covariance: number[] = [];
  rows.forEach((a, i) => {
    rows.forEach((b, j) => {
      let value = 0;
      for (const [p, w] of a.combination) {
        for (const [q, v] of b.combination) value += w * v * (item.covariance[p * n + q] ?? 0);
      }
      const rho = a.side === b.side ? 1 : learned.common;
      if (a.pair === b.pair) value += rho * hand(a.pair).setting ** 2;
      const hung = zero === null ? undefined : judged.model.zeros[zero];
      if (hung) {
        const lever = a.pair.weights[hung.station] * b.pair.weights[hung.station];
        value += rho * hung.hand.setting ** 2 * lever;
      }
      if (i === j) value += hand(a.pair).reading ** 2 + gaugeOf(learned, a.pair.pair.gauge).biasSe ** 2;
      covariance.push(value);
    });
  });
  return { weight, mean, covariance };
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
