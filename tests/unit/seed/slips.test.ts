import { describe, expect, it } from 'vitest';
import { slipSizes, type SlipPlace } from '@/seed/slips';

const place: SlipPlace = {
  nominal: { L: 153, R: 158 },
  clearance: 100,
  neighbours: [{ L: 170, R: 170 }],
  fixedMark: 21,
};

describe('slipSizes', () => {
  it('takes the clearance away where it is left out, and adds it once more where it is set twice', () => {
    expect(slipSizes('clearance left out', place)).toEqual([{ L: -100, R: -100 }]);
    expect(slipSizes('clearance twice', place)).toEqual([{ L: 100, R: 100 }]);
  });

  it('has no clearance slip in a round without clearance', () => {
    expect(slipSizes('clearance left out', { ...place, clearance: 0 })).toEqual([]);
    expect(slipSizes('clearance twice', { ...place, clearance: 0 })).toEqual([]);
  });

  it('sets the neighbouring row in place of the own', () => {
    expect(slipSizes('another row', place)).toEqual([{ L: 17, R: 12 }]);
  });

  it('is off by the length to the fixed mark, either way', () => {
    expect(slipSizes('another mark', place)).toEqual([
      { L: 21, R: 21 },
      { L: -21, R: -21 },
    ]);
  });

  it('exchanges tens and units of what is set: 253 as 235 is −18, 258 as 285 is +27', () => {
    expect(slipSizes('digits exchanged', place)).toEqual([
      { L: -18, R: 0 },
      { L: 0, R: 27 },
    ]);
  });

  it('exchanges the sides: each gets what the other should have', () => {
    expect(slipSizes('sides exchanged', place)).toEqual([{ L: 5, R: -5 }]);
  });

  it('reads a tape ten or a hundred millimetres off, on one side', () => {
    const sizes = slipSizes('tape', place).map(({ L, R }) =>
      [Math.abs(L), Math.abs(R)].sort((a, b) => a - b),
    );
    expect(sizes.every(([small, large]) => small === 0 && (large === 10 || large === 100))).toBe(true);
  });
});
