import { describe, expect, it } from 'vitest';
import { foretoldHeights } from '@/lib/assess/calibration';
import { judgeRound } from '@/lib/assess/cause/judge';
import type { Round } from '@/lib/measure/types';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';

const learned = knownShop();
const ZEROS: Hung[] = [
  { at: 1100, zero: true, left: 0.1, right: 0.2 },
  { at: 2600, zero: true, left: -0.1, right: 0 },
];
const OFF: Hung = { at: 0, left: -9.7, right: -9.9, section: 'front' };
const AGAIN: Hung = { at: 0, left: 0.2, right: 0.1, section: 'front' };
const REAR: Hung = { at: 3200, left: 0.3, right: -0.2, section: 'rear' };

const judge = (round: Round) => {
  const judged = judgeRound(round, learned);
  if ('why' in judged) throw new Error(judged.why);
  return judged.heights;
};

describe('a gauge that was hung again', () => {
  const round = roundOf({ hung: [...ZEROS, OFF, REAR, AGAIN] });
  const found = foretoldHeights(round, learned);

  it('is told by the readings up to then, and proved by all of them', () => {
    const before = judge(roundOf({ hung: [...ZEROS, OFF, REAR] }));
    expect(found.map(({ setup, point, side, proved, by }) => [setup, point, side, proved, by])).toEqual([
      ['b1-03', 'A', 'L', 'gauge', 'rehang'],
      ['b1-03', 'B', 'R', 'gauge', 'rehang'],
    ]);
    for (const height of found) {
      const told = before.find(({ setup, side }) => setup === height.setup && side === height.side);
      expect(height.p).toEqual(told?.p);
      expect(height.p.gauge).toBeLessThan(0.99);
    }
  });

  it('proves the body where it reads the same again', () => {
    const same = foretoldHeights(roundOf({ hung: [...ZEROS, OFF, REAR, { ...OFF, left: -9.4 }] }), learned);
    expect(same.map(({ proved }) => proved)).toEqual(['body', 'body']);
  });

  it('says nothing of the setup that was hung last, nor of stations hung once', () => {
    expect(new Set(found.map(({ setup }) => setup))).toEqual(new Set(['b1-03']));
    expect(foretoldHeights(roundOf({ hung: [...ZEROS, OFF, REAR] }), learned)).toEqual([]);
  });

  it('proves nothing at a zero station, whose own reading cannot show its setting', () => {
    const zeroAgain = roundOf({ hung: [...ZEROS, REAR, { at: 1100, zero: true, left: 0, right: 0 }, REAR] });
    expect(foretoldHeights(zeroAgain, learned).map(({ setup }) => setup)).toEqual(['b1-03', 'b1-03']);
  });
});

describe('a cause on record', () => {
  const recorded = roundOf({ hung: [...ZEROS, { ...OFF, cause: 'both' }, REAR] });

  it('is what was proved, and is set aside in what was told before', () => {
    const found = foretoldHeights(recorded, learned);
    expect(found.map(({ proved, by }) => [proved, by])).toEqual([
      ['both', 'recorded'],
      ['both', 'recorded'],
    ]);
    const without = judge(roundOf({ hung: [...ZEROS, OFF, REAR] }));
    expect(found[0]?.p).toEqual(without.find(({ setup, side }) => setup === 'b1-03' && side === 'L')?.p);
  });

  it('has the last word over a gauge that was hung again', () => {
    const both = roundOf({ hung: [...ZEROS, { ...OFF, cause: 'body' }, REAR, AGAIN] });
    expect(foretoldHeights(both, learned).map(({ proved }) => proved)).toEqual(['body', 'body']);
  });

  it('counts at a zero station too', () => {
    const [a, b] = ZEROS;
    if (!a || !b) throw new Error('two zero stations');
    const round = roundOf({ hung: [{ ...a, cause: 'gauge' }, b, OFF, REAR] });
    expect(foretoldHeights(round, learned).map(({ setup }) => setup)).toEqual(['b1-01', 'b1-01']);
  });
});

it('nothing was foretold where the center section does not carry the datum', () => {
  const round = roundOf({
    hung: [...ZEROS, OFF, REAR, AGAIN],
    lengths: [{ point: 'C-E', deviation: 9, section: 'center' }],
  });
  expect(foretoldHeights(round, learned)).toEqual([]);
});
