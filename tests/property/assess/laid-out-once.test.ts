import fc from 'fast-check';
import { expect, it } from 'vitest';
import { frameRound, type RoundFrame } from '@/lib/assess/cause/frame';
import { judgeRound } from '@/lib/assess/cause/judge';
import type { GaugeState, Learned } from '@/lib/assess/cause/learned';
import { Settings } from '@/lib/assess/cause/settings';
import { knownSlips, slipsOf } from '@/lib/assess/cause/slips';
import type { Round } from '@/lib/measure/types';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';
import { anyRound } from './rounds';

const shop = (): Learned => knownShop({ technicians: { T1: {}, T2: { setting: 0.5, bias: 0.4 } } });

const rounds = fc
  .sample(anyRound({ stations: { min: 1, max: 3 } }), { seed: 11, numRuns: 12 })
  .map((parts) => roundOf(parts));

const framed = (round: Round): RoundFrame => {
  const frame = frameRound(round);
  if ('why' in frame) throw new Error('These rounds can be judged.');
  return frame;
};

it('the slips of a setup are the same whether its sheet was met before or not', () => {
  for (const clearance of [0, 50, 60]) {
    for (const round of rounds) {
      const frame = framed({ ...round, clearance });
      const slips = knownSlips(frame);
      for (const pair of frame.stations.flatMap(({ pairs }) => pairs))
        expect(slips(pair)).toEqual(slipsOf(pair, frame));
    }
  }
});

it('a gauge hung at two stations at once misreads no row of its own, though the sheet was met before', () => {
  const hung = (at: number, nominal: number, zero = false): Hung => ({
    ...{ at, zero, left: 0, right: 0, nominal: [nominal, nominal] },
  });
  const apart = roundOf({
    hung: [hung(1100, 212, true), hung(2600, 238, true), hung(0, 110), hung(400, 140)],
  });
  const [a, b, c, d] = apart.setups;
  if (!a || !b || !c || !d) throw new Error('Four gauges were hung.');
  const together = {
    ...apart,
    setups: [a, b, { ...c, observations: [...c.observations, ...d.observations] }],
  };
  const rowsOf = (round: Round): number[] => {
    const frame = framed(round);
    const pair = frame.stations.find(({ x }) => x === 0)?.pairs[0];
    if (!pair) throw new Error('A gauge was hung at the front.');
    return knownSlips(frame)(pair).flatMap(({ misset, left }) => (misset === 'other-row' ? [left] : []));
  };
  expect(rowsOf(apart)).toContain(140 - 110);
  expect(rowsOf(together)).not.toContain(140 - 110);
  expect(rowsOf(together)).toContain(212 - 110);
});

it('a round is judged alike whatever was judged before it', () => {
  const after = shop();
  const inTurn = rounds.map((round) => judgeRound(round, after));
  const backwards = [...rounds].reverse().map((round) => judgeRound(round, after));
  rounds.forEach((round, i) => {
    const alone = judgeRound(round, shop());
    for (const other of [inTurn[i], backwards[rounds.length - 1 - i]]) {
      if ('why' in alone || other === undefined || 'why' in other)
        throw new Error('These rounds can be judged.');
      expect(other.heights).toEqual(alone.heights);
      expect(other.found.leftOut).toBe(alone.found.leftOut);
    }
  });
});

it('what a hand can have done with a gauge is the same whichever hand and gauge were met before', () => {
  const learned = shop();
  const { T1: one, T2: other } = learned.technicians;
  if (!one || !other) throw new Error('Two technicians are known.');
  const gauges: GaugeState[] = [
    learned.newGauge,
    { ...learned.newGauge, mark: 35, markSd: 2 },
    { ...learned.newGauge, mark: -12, markSd: 0.5 },
  ];
  const lists = rounds.slice(0, 4).flatMap((round) => {
    const frame = framed(round);
    return frame.stations.flatMap(({ pairs }) => pairs.map(knownSlips(frame)));
  });
  const after = new Settings(learned);
  for (const slips of lists) {
    for (const hand of [one, other]) {
      for (const gauge of gauges) {
        const alone = new Settings(learned);
        const { settings, columns, wrong } = after.pair(hand, gauge, slips);
        const own = alone.pair(hand, gauge, slips);
        expect({ settings, wrong }).toEqual({ settings: own.settings, wrong: own.wrong });
        expect(settings.filter(({ misset }) => misset === 'other-mark').map(({ left }) => left)).toEqual([
          -gauge.mark,
          gauge.mark,
        ]);
        expect({ ...columns, numbers: null }).toEqual({ ...own.columns, numbers: null });
        columns.numbers.forEach((number, at) =>
          expect(number).toBeCloseTo(own.columns.numbers[at] ?? NaN, 12),
        );
        expect(after.zero(hand, gauge, slips)).toEqual(alone.zero(hand, gauge, slips));
      }
    }
  }
});
