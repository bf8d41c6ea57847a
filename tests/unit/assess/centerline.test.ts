import { describe, expect, it } from 'vitest';
import { assessRound } from '@/lib/assess/round';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, roundOf } from '@/tests/simulation/round';

const pins = (front: number[], more: Partial<Hung> = {}): Hung[] => [
  { at: 1100, zero: true, left: 0, quantity: 'centerline' },
  { at: 2600, zero: true, left: 0.1, quantity: 'centerline' },
  ...front.map((left): Hung => ({ at: 0, left, n: [2, 2], quantity: 'centerline', ...more })),
  { at: 3100, left: 0.2, quantity: 'centerline' },
];

describe('the centerline', () => {
  it('is judged pin by pin, with probabilities that sum to one', () => {
    const { centerline, heights } = assessRound(roundOf({ hung: pins([6]) }), knownShop());
    expect(heights).toEqual([]);
    expect(centerline.map((pin) => [pin.setup, pin.zero])).toEqual([
      ['b1-01', true],
      ['b1-02', true],
      ['b1-03', false],
      ['b1-04', false],
    ]);
    for (const { p } of centerline) expect(p.neither + p.gauge + p.body + p.both).toBeCloseTo(1, 9);
  });

  it('tells sway from a gauge hung off centre by hanging it again', () => {
    const at = (front: number[]) => {
      const { centerline } = assessRound(roundOf({ hung: pins(front) }), knownShop());
      const pin = centerline.find((one) => one.setup === 'b1-03');
      return { body: (pin?.p.body ?? NaN) + (pin?.p.both ?? NaN), gauge: pin?.p.gauge ?? NaN };
    };
    const once = at([6]);
    expect(at([6, 6.2]).body).toBeGreaterThan(Math.max(0.95, once.body));
    expect(at([6, 0.1]).gauge).toBeGreaterThan(Math.max(0.9, once.gauge));
  });

  it('takes no bias of heights into account', () => {
    const level = assessRound(roundOf({ hung: pins([2.6]) }), knownShop());
    const biased = assessRound(
      roundOf({ hung: pins([2.6]) }),
      knownShop({ technicians: { T1: { bias: 1.8 } }, gauges: { G3: { bias: 0.9 } } }),
    );
    expect(biased.centerline).toEqual(level.centerline);
  });

  it('stands beside the heights of the same gauges without touching them', () => {
    const heights: Hung[] = [
      { at: 1100, zero: true, left: 0, right: 0 },
      { at: 2600, zero: true, left: 0, right: 0 },
      { at: 0, left: 6, right: 6.1 },
      { at: 3100, left: 0.1, right: 0.3 },
    ];
    const shop = knownShop();
    const alone = assessRound(roundOf({ hung: heights }), shop);
    const together = assessRound(roundOf({ hung: [...heights, ...pins([4])] }), shop);
    expect(together.heights).toEqual(alone.heights);
    expect(together.centerline.length).toBe(4);
  });
});
