import { SIDES } from '@/lib/measure/types';
import type { DatumLine } from '../types';
import { componentAt, type Explanation } from '../cause/explanation';
import type { HeightPair } from '../cause/frame';
import { handOf, type PairModel, type RoundModel } from '../cause/model';
import type { Learned } from '../cause/learned';
import { pairSetting } from '../cause/moments';
import { damagedAt } from './faults';
import type { Bar } from './types';

/** An explanation with its share of a hypothesis. Shares sum to one. */
export interface Member {
  share: number;
  explanation: Explanation;
}

/**
 * The deviation that a hypothesis leads to expect at every station and side: what it takes to be wrong there, less
 * the datum as it has it, and the known biases. Ordinary scatter of the setting and of the body is not in it, so
 * what a reading differs by is what the hypothesis leaves to chance.
 */
export function barsOf(model: RoundModel, learned: Learned, members: readonly Member[]): Bar[] {
  const bars: Bar[] = [];
  const lastSetups = new Map<number, number>();
  model.frame.stations.forEach((station, g) => {
    for (const pair of station.pairs) lastSetups.set(g, Math.max(pair.setup, lastSetups.get(g) ?? -1));
  });
  const add = (station: number, pair: HeightPair, side: 0 | 1, expected: number, scatter: number): void => {
    const point = pair.points[side];
    if (point === null) return;
    bars.push({
      setup: pair.label,
      gauge: pair.gauge,
      technician: pair.technician,
      point,
      side: SIDES[side],
      station: model.frame.stations[station]?.x ?? Number.NaN,
      zero: model.frame.stations[station]?.zero ?? false,
      tolerance: pair.tolerance[side],
      measured: pair.y[side],
      expected,
      scatter,
      last: lastSetups.get(station) === pair.setup,
    });
  };
  for (const side of [0, 1] as const) {
    // A zero gauge's own reading shows reading scatter and nothing else, whatever is wrong with it.
    for (const zero of model.zeros)
      add(zero.station, zero.pair, side, 0, zero.hand.reading / Math.sqrt(Math.max(1, zero.pair.n[side])));
    model.steps.forEach((pair, step) => {
      const expected = members.reduce(
        (sum, { share, explanation }) => sum + share * expectedAt(model, explanation, pair, step, side),
        0,
      );
      add(pair.station, pair.pair, side, expected, scatterAt(model, learned, pair, side));
    });
  }
  return bars.sort((a, b) => a.station - b.station || a.side.localeCompare(b.side));
}

function expectedAt(
  model: RoundModel,
  item: Explanation,
  pair: PairModel,
  step: number,
  side: 0 | 1,
): number {
  const datum =
    pair.weights[0] * (item.mean[pair.zeros[0] + side] ?? 0) +
    pair.weights[1] * (item.mean[pair.zeros[1] + side] ?? 0);
  const setting = componentAt(pair.settings, item.settings[step] ?? 0);
  const hanger = setting.misset === 'ordinary' ? null : pairSetting(item, pair, setting);
  const off = side === 0 ? 'left' : 'right';
  const misset = hanger !== null && setting.misset !== other(off) ? hanger[off] : 0;
  const body = damagedAt(model, item, pair.station, side) ? (item.mean[pair.body + side] ?? 0) : 0;
  return pair.hand.bias + pair.gauge.bias + misset + body - datum;
}

const other = (side: 'left' | 'right'): 'left' | 'right' => (side === 'left' ? 'right' : 'left');

/** Sd of ordinary setting, reading and body at one height, and of what is not known of the biases, mm. */
function scatterAt(model: RoundModel, learned: Learned, pair: PairModel, side: 0 | 1): number {
  const setting = handOf(learned, pair.pair.technician).setting ** 2;
  const body = learned.bodies[model.frame.phase].scatter ** 2;
  return Math.sqrt(setting + body + pair.noise[side] + pair.commonNoise);
}

/** Where a hypothesis has both ends of the datum, by the zero setups hung last, mm. */
export function datumOf(model: RoundModel, members: readonly Member[]): DatumLine[] {
  const ends = ([0, 1] as const).map((station) =>
    model.zeros.filter((zero) => zero.station === station).at(-1),
  );
  const [front, rear] = ends;
  if (!front || !rear) return [];
  const expected = (at: number): number =>
    members.reduce((sum, { share, explanation }) => sum + share * (explanation.mean[at] ?? 0), 0);
  return ([0, 1] as const).map((side) => ({
    side: SIDES[side],
    front: { station: model.frame.stations[0]?.x ?? 0, error: expected(front.error + side) },
    rear: { station: model.frame.stations[1]?.x ?? 0, error: expected(rear.error + side) },
  }));
}
