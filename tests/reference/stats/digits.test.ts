import { describe, it } from 'vitest';
import { digitPreference } from '@/lib/stats';
import tables from '../data/08-digit-preference/tables.json';
import { expectRelative } from './closeness';

describe('digitPreference against an enumeration in integers', () => {
  it.each(tables.cases)('$id', ({ counts, ...expected }) => {
    const found = digitPreference(counts);
    expectRelative(found.chiSquare, expected.chi_square, 1e-9);
    expectRelative(found.p, expected.chi_square_p, 1e-9);
    expectRelative(found.exactP, expected.exact_p_probability_order, 1e-9);
    expectRelative(found.exactPByChiSquare, expected.exact_p_chi_square_order, 1e-9);
  });

  it('two and three cells by hand: 5 and 0 of two, 0 0 3 of three', () => {
    expectRelative(digitPreference([5, 0]).exactP, 2 / 32, 1e-12);
    expectRelative(digitPreference([0, 0, 3]).exactP, 3 / 27, 1e-12);
    expectRelative(digitPreference([0, 1, 2]).exactPByChiSquare, 21 / 27, 1e-12);
  });
});
