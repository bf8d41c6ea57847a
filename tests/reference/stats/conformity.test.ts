import { describe, expect, it } from 'vitest';
import { conformity, decisionRisks } from '@/lib/stats';
import probabilities from '../data/03-gum-conformity/conformance-probability.json';
import risks from '../data/03-gum-conformity/global-risk.json';
import { expectAbsolute, expectRelative } from './closeness';

describe('conformity against R pnorm (JCGM 106:2012, 7)', () => {
  it.each(probabilities.cases)('y = $y, u = $u within $TL … $TU', ({ y, u, TL, TU, ...expected }) => {
    const found = conformity({ value: y, uncertainty: u, lower: TL, upper: TU });
    expectRelative(found.probability, expected.p_c, 1e-10);
    expectRelative(found.nonconforming, expected.p_nc, 1e-10);
    expectRelative(found.below, expected.p_below_TL, 1e-10);
    expectRelative(found.above, expected.p_above_TU, 1e-10);
  });
});

describe('decisionRisks against R integrate and pmvnorm (JCGM 106:2012, 9)', () => {
  it.each(risks.cases)(
    'process $y0 ± $u0, uncertainty $um, guard $w',
    ({ y0, u0, um, TL, TU, w, ...expected }) => {
      const found = decisionRisks({
        processMean: y0,
        processSd: u0,
        uncertainty: um,
        lower: TL,
        upper: TU,
        guard: w,
      });
      expectAbsolute(found.consumer, expected.R_C, 1e-9);
      expectAbsolute(found.producer, expected.R_P, 1e-9);
      expectAbsolute(found.conforming, expected.p_conforming, 1e-9);
      expectAbsolute(found.accepted, expected.p_accepted, 1e-9);
      expectAbsolute(found.nonconformingGivenAccepted, expected.p_nonconforming_given_accepted, 1e-9);
      expectAbsolute(found.conformingGivenRejected, expected.p_conforming_given_rejected, 1e-9);
      expectAbsolute(found.accepted - found.consumer + found.producer, found.conforming, 1e-11);
    },
  );

  it('has a case for each of six settings and three guard bands', () => {
    expect(risks.cases.length).toBe(18);
  });
});
