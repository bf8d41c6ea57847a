import { describe, expect, it } from 'vitest';
import { normalCdf, normalCdfByTable } from '@/lib/stats/distributions';

describe('normalCdfByTable', () => {
  it('agrees with normalCdf to 2e-11 everywhere, between the steps of its table too', () => {
    let worst = 0;
    for (let z = -9; z <= 9; z += 0.0007)
      worst = Math.max(worst, Math.abs(normalCdfByTable(z) - normalCdf(z)));
    expect(worst).toBeLessThan(2e-11);
  });

  it('never falls', () => {
    let steepestFall = 0;
    for (let z = -9; z <= 9; z += 0.0031) {
      steepestFall = Math.max(steepestFall, normalCdfByTable(z - 0.0031) - normalCdfByTable(z));
    }
    expect(steepestFall).toBe(0);
  });

  it('is 0 and 1 at the ends', () => {
    expect(normalCdfByTable(-Infinity)).toBe(0);
    expect(normalCdfByTable(Infinity)).toBe(1);
  });
});
