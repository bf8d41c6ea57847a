import { describe, expect, it } from 'vitest';
import { changePoint, weightedChangePoint } from '@/lib/stats';
import { expectRelative } from './closeness';

/** Yearly flow of the Nile at Aswan 1871–1970 (R dataset Nile; Cobb 1978, Biometrika 65, 243–251). */
const NILE = [
  1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958,
  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020,
  1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040,
  759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890,
  744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740,
];

describe('changePoint on the Nile', () => {
  const found = changePoint(NILE);

  it('R strucchange breakpoints(Nile ~ 1): after the 28th year, means 1097.75 and 849.972', () => {
    expect(found.at).toBe(28);
    expectRelative(found.before, 1097.75, 1e-14);
    expectRelative(found.after, 849.972222222222, 1e-14);
  });

  it('an interval near that of strucchange, which is of another kind: 25 to 32', () => {
    expect(found.low).toBeGreaterThanOrEqual(25);
    expect(found.high).toBeLessThanOrEqual(32);
  });

  it('the probabilities of the places, written out in R', () => {
    const expected = [0.0022168778602, 0.0570863555856, 0.120877670704, 0.764344369587, 0.0441583075794];
    expected.forEach((p, i) => expectRelative(found.probabilities[25 + i], p, 1e-10));
    expectRelative(
      found.probabilities.reduce((sum, p) => sum + p, 0),
      1,
      1e-12,
    );
  });

  it('p is R t.test(var.equal = TRUE) at the best place, times 97 places', () => {
    expectRelative(found.p, 7.21587104051798e-12, 1e-9);
  });
});

describe('weightedChangePoint', () => {
  it('is changePoint, held against R above, where all weigh the same and some places are empty', () => {
    const found = changePoint(NILE, { least: 1 });
    const values = [...NILE.slice(0, 10), null, ...NILE.slice(10)].map((value) =>
      value === null ? null : { value, weight: 3 },
    );
    const weighted = weightedChangePoint(values);
    expect(weighted.at).toBe(29);
    expectRelative(weighted.p, found.p ?? NaN, 1e-9);
    expectRelative(weighted.change, found.change ?? NaN, 1e-12);
    [...values.keys()].forEach((at) => {
      const expected = at === 10 ? 0 : (found.probabilities[at < 10 ? at : at - 1] ?? NaN);
      expect(Math.abs((weighted.probabilities[at] ?? NaN) - expected)).toBeLessThan(1e-9);
    });
  });

  it('weighs the places as integrating the likelihood over both means and the scatter on a grid does', () => {
    const values = [
      { value: 1.1, weight: 4 },
      { value: 0.9, weight: 1 },
      { value: 1.6, weight: 2 },
      { value: 1.9, weight: 3 },
    ];
    const overMean = (some: typeof values, sd: number) => {
      let sum = 0;
      for (let mean = -8; mean < 11; mean += 0.02)
        sum += Math.exp(
          -some.reduce((all, { value, weight }) => all + weight * (value - mean) ** 2, 0) / (2 * sd * sd),
        );
      return sum;
    };
    const places = [1, 2, 3].map((at) => {
      let sum = 0;
      for (let log = -5; log < 3; log += 0.02) {
        const sd = Math.exp(log);
        sum +=
          overMean(values.slice(0, at), sd) * overMean(values.slice(at), sd) * Math.exp(-values.length * log);
      }
      return sum;
    });
    const total = places.reduce((sum, one) => sum + one, 0);
    const found = weightedChangePoint(values);
    places.forEach((one, i) => expect(found.probabilities[i + 1]).toBeCloseTo(one / total, 3));
    expect(found.at).toBe(2);
  });

  it('refuses weights that are none', () => {
    expect(() => weightedChangePoint([{ value: 1, weight: 0 }])).toThrow(RangeError);
    expect(weightedChangePoint([{ value: 1, weight: 1 }, null]).why).toMatch(/four values/);
  });
});
