import { describe, expect, it } from 'vitest';
import { holdsQuarter, spanFrom, timesOf } from '@/app/technicians/_parts/span';

describe('the time and gauge that a hand is held to', () => {
  it('leaves out what cannot be understood and says so', () => {
    const { span, notes } = spanFrom({ from: '2026-02-30', to: '2026-03-31', gauge: 'CG1' });
    expect(span).toEqual({ from: undefined, to: '2026-03-31', gauge: 'CG1' });
    expect(notes).toEqual(['“2026-02-30” is not understood as from, so it was left out.']);
  });

  it('takes in the whole last day, in the shop’s zone', () => {
    const { from, to } = timesOf({ from: '2026-03-29', to: '2026-03-29', gauge: undefined }, 'Europe/Berlin');
    // That day the clocks go forward: it has 23 hours.
    expect((to ?? 0) - (from ?? 0)).toBe(23 * 3600 * 1000);
  });

  it('holds a quarter of which it holds a day', () => {
    const span = { from: '2026-03-31', to: '2026-04-01', gauge: undefined };
    expect(['2025 Q4', '2026 Q1', '2026 Q2', '2026 Q3'].filter((one) => holdsQuarter(span, one))).toEqual([
      '2026 Q1',
      '2026 Q2',
    ]);
    const open = { from: undefined, to: undefined, gauge: undefined };
    expect(holdsQuarter(open, '2026 Q1')).toBe(true);
  });
});
