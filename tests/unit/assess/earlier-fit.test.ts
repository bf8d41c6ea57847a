import { describe, expect, it } from 'vitest';
import { judgeRound } from '@/lib/assess/cause/judge';
import { PHASES } from '@/lib/assess/cause/learned';
import { SECTIONS } from '@/lib/measure/types';
import { knownShop } from '@/tests/simulation/known';
import { bentRound } from '@/tests/simulation/bent-round';

describe('a fit of the time before opposed damage was known', () => {
  it('judges as one to which it never happens, until the shop has learned anew', () => {
    const [earlier, never] = [knownShop(), knownShop()];
    for (const phase of PHASES)
      for (const section of SECTIONS) {
        for (const { patterns } of never.bodies[phase].impacts) patterns[section].opposed = 0;
        for (const { patterns } of earlier.bodies[phase].impacts)
          Reflect.deleteProperty(patterns[section], 'opposed');
      }
    const round = bentRound({ seed: 3, bent: (x, side) => ({ up: x === 0 ? (side === 'L' ? 9 : -9) : 0 }) });
    const [judged, expected] = [judgeRound(round, earlier), judgeRound(round, never)];
    if ('why' in judged || 'why' in expected) throw new Error('The round has both zero stations.');
    expect(judged.heights).toEqual(expected.heights);
    for (const { p } of judged.heights)
      expect(Object.values(p).reduce((sum, value) => sum + value, 0)).toBeCloseTo(1, 9);
  });
});
