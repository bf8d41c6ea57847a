import { describe, expect, it } from 'vitest';
import { gaussLegendre, integratePanels } from '@/lib/stats/numeric/gauss-legendre';
import { findRoot } from '@/lib/stats/numeric/root';

describe('findRoot', () => {
  it('finds a root to the last digit or two, flat or steep', () => {
    expect(findRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(findRoot((x) => (x - 0.3) ** 3, -5, 7)).toBeCloseTo(0.3, 5);
    expect(findRoot((x) => Math.exp(x) - 1e-8, -100, 100)).toBeCloseTo(Math.log(1e-8), 12);
  });

  it('takes an end that is a root, and refuses a bracket without a change of sign', () => {
    expect(findRoot((x) => x, 0, 1)).toBe(0);
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(/No change of sign/);
  });
});

describe('gaussLegendre', () => {
  it('five points: Abramowitz & Stegun, table 25.4', () => {
    const { nodes, weights } = gaussLegendre(5);
    expect(nodes[4]).toBeCloseTo(0.906179845938664, 14);
    expect(nodes[3]).toBeCloseTo(0.538469310105683, 14);
    expect(weights[4]).toBeCloseTo(0.236926885056189, 14);
    expect(weights[2]).toBeCloseTo(0.568888888888889, 14);
  });

  it.each([1, 2, 7, 40, 400])('%d points are exact for the even power 2n − 2', (n) => {
    const { nodes, weights } = gaussLegendre(n);
    const power = 2 * n - 2;
    const sum = nodes.reduce((total, x, i) => total + (weights[i] ?? 0) * x ** power, 0);
    expect(sum * (power + 1)).toBeCloseTo(2, 9);
  });

  it('panels add up', () => {
    expect(integratePanels(Math.exp, [0, 0.5, 2], 12)).toBeCloseTo(Math.exp(2) - 1, 13);
    expect(integratePanels(Math.exp, [])).toBe(0);
  });
});
