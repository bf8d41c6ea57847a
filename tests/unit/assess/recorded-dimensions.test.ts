import { describe, expect, it } from 'vitest';
import { recordedDimensions } from '@/lib/assess';
import { type Hung, roundOf } from '@/tests/simulation/round';

const hung: Hung[] = [
  { at: 1100, zero: true, left: 0, right: 0 },
  { at: 2600, zero: true, left: 0, right: 0 },
  { at: 0, left: 6.2, right: 3, n: [2, 3] },
  { at: 0, left: 0.4, right: 3.1, technician: 'T2', gauge: 'G9' },
];

describe('what counts for the record', () => {
  const recorded = recordedDimensions(roundOf({ hung }));
  const front = (side: 'L' | 'R') => recorded.find((one) => one.station === 0 && one.side === side);

  it('is one line a dimension, by its last setup', () => {
    expect(recorded.length).toBe(6);
    expect(front('L')).toMatchObject({
      setup: 'b1-04',
      technician: 'T2',
      gauge: 'G9',
      deviation: 0.4,
      within: true,
      n: 1,
      setups: 2,
    });
  });

  it('is within up to the edge of the tolerance, included', () => {
    expect(front('R')?.within).toBe(false);
    const edge = recordedDimensions(roundOf({ hung: hung.slice(0, 3) }));
    expect(edge.find((one) => one.station === 0 && one.side === 'R')?.within).toBe(true);
  });

  it('takes the last side that was read where a re-hang reads one side only', () => {
    const one = recordedDimensions(roundOf({ hung: [...hung.slice(0, 3), { at: 0, left: 0.3 }] }));
    expect(one.find((d) => d.station === 0 && d.side === 'L')?.setup).toBe('b1-04');
    expect(one.find((d) => d.station === 0 && d.side === 'R')?.setup).toBe('b1-03');
  });

  it('is empty for a round without readings', () => {
    expect(recordedDimensions(roundOf({ hung: [] }))).toEqual([]);
  });
});
