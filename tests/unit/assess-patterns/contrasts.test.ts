import { describe, expect, it } from 'vitest';
import { allBeyond, meanOf, quantile, type Part } from '@/lib/assess/patterns/mixture';
import { diamond } from '@/lib/assess/patterns/diamond';
import { mash } from '@/lib/assess/patterns/mash';
import { sway } from '@/lib/assess/patterns/sway';
import type { Change } from '@/lib/assess/patterns/changes';
import { bodyOf, entry, meanOfAll, partsOf, sumOf } from '@/lib/assess/patterns/body';
import type { PatternFinding, Untold } from '@/lib/assess/patterns';
import { sag } from '@/lib/assess/patterns/sag';
import { twist } from '@/lib/assess/patterns/twist';
import { judgeRound } from '@/lib/assess/cause/judge';
import { knownShop } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import type { Section, Side } from '@/lib/measure/types';

/** A length that is known for sure. */
function length(
  from: [number, Side],
  to: [number, Side],
  section: Section,
  { nominal = 1400, change = 0, gauge = 'M1' }: { nominal?: number; change?: number; gauge?: string } = {},
): Change {
  const end = ([station, side]: [number, Side]) => ({ letter: `${station}${side}`, station, side });
  return {
    point: `${from.join('')}-${to.join('')}`,
    ...{ nominal, tolerance: 3, section, gauge, asRead: change, ends: [end(from), end(to)] },
    components: [{ weight: 1, mean: change, variance: 0.01 }],
  };
}

/** The four lengths between stations 1000 and 2500, 880 mm apart across, with points moved: from the geometry. */
function frame(
  section: Section,
  moved: Partial<Record<'PL' | 'PR' | 'QL' | 'QR', [along: number, across: number]>>,
) {
  const at = (name: 'PL' | 'PR' | 'QL' | 'QR', move: boolean): [number, number] => {
    const [along, across] = (move ? moved[name] : undefined) ?? [0, 0];
    return [(name.startsWith('P') ? 1000 : 2500) + along, (name.endsWith('L') ? -440 : 440) + across];
  };
  const between = (a: 'PL' | 'PR', b: 'QL' | 'QR') => {
    const [one, other] = [true, false].map((move) => {
      const [p, q] = [at(a, move), at(b, move)];
      return Math.hypot(q[0] - p[0], q[1] - p[1]);
    });
    const side = (name: string): Side => (name.endsWith('L') ? 'L' : 'R');
    return length([1000, side(a)], [2500, side(b)], section, {
      nominal: other ?? 0,
      change: (one ?? 0) - (other ?? 0),
    });
  };
  return [between('PL', 'QL'), between('PR', 'QR'), between('PL', 'QR'), between('PR', 'QL')];
}

function told(found: PatternFinding | Untold): PatternFinding {
  if ('missing' in found) throw new Error(`Not told: ${found.missing}`);
  return found;
}

describe('a diamond', () => {
  it('is the difference of the diagonals: a side pushed back by h makes it 2 h l / d', () => {
    // l 1500, w 880, d 1739.08: a left side 6 mm back gives 2 × 6 × 1500 / 1739.08 = 10.35 mm, by hand.
    const found = told(diamond(frame('center', { PL: [6, 0], QL: [6, 0] })));
    expect(found.size).toBeCloseTo(10.35, 1);
    expect(found).toMatchObject({ named: true, side: 'L' });
    expect(told(diamond(frame('center', { PR: [6, 0], QR: [6, 0] })))).toMatchObject({
      named: true,
      side: 'R',
    });
  });

  it('is not named where a side is shortened', () => {
    const found = told(diamond(frame('center', { PL: [12, 0] })));
    expect(Math.abs(found.size)).toBeGreaterThan(3);
    expect(found).toMatchObject({ named: false, why: 'sides-differ' });
  });

  it('cannot be told without the lengths of the sides', () => {
    expect(diamond(frame('center', {}).slice(2))).toMatchObject({ missing: 'side-lengths' });
    expect(diamond(frame('center', {}).slice(0, 2))).toMatchObject({ missing: 'diagonals' });
  });
});

describe('sway without centre pins', () => {
  it('is the shift that makes the diagonals of an end differ by 2 s w / d', () => {
    expect(told(sway(null, frame('front', { PL: [0, 7], PR: [0, 7] }), 'front')).size).toBeCloseTo(7, 1);
    expect(told(sway(null, frame('rear', { QL: [0, -7], QR: [0, -7] }), 'rear')).size).toBeCloseTo(-7, 1);
  });
});

describe('mash', () => {
  const rails = [length([0, 'L'], [1000, 'L'], 'front', { change: -7 })];
  it('is the mean change of the lengths along a side, named where they are short', () => {
    expect(told(mash(rails, 'front', 'L'))).toMatchObject({ named: true, size: -7 });
    expect(told(mash([length([0, 'L'], [1000, 'L'], 'front', { change: 7 })], 'front', 'L')).named).toBe(
      false,
    );
  });

  it('is not named where the same gauge reads other sections short alike', () => {
    const others = frame('center', {}).map((one) => ({
      ...one,
      components: [{ weight: 1, mean: -6.5, variance: 0.01 }],
    }));
    expect(told(mash([...rails, ...others], 'front', 'L'))).toMatchObject({
      named: false,
      why: 'same-gauge',
    });
    const elsewhere = others.map((one) => ({ ...one, gauge: 'M2' }));
    expect(told(mash([...rails, ...elsewhere], 'front', 'L')).named).toBe(true);
  });
});

describe('the contrasts of heights', () => {
  const hung = [
    { at: 1000, zero: true, left: 0, right: 0, section: 'center' as const },
    { at: 2500, zero: true, left: 0, right: 0, section: 'center' as const },
    { at: 0, left: 1, right: 1, section: 'front' as const },
    { at: 4000, left: 1, right: 1, section: 'rear' as const },
  ];
  const judged = judgeRound(roundOf({ hung }), knownShop());
  const body = 'why' in judged ? null : bodyOf(judged);
  if (body === null) throw new Error('The round is judged.');

  it('of sag and twist stay as they are when the datum is lifted, tilted or rolled', () => {
    for (const rigid of [() => 1, (x: number) => x, (_: number, side: number) => (side === 0 ? 1 : -1)]) {
      const moved = body.stations.map(({ x, at, ...rest }) => ({
        ...{ x, at, ...rest },
        asRead: [rigid(x, 0), rigid(x, 1)] as [number, number],
      }));
      const tilted = { ...body, stations: moved };
      expect(told(sag(tilted)).asRead).toBeCloseTo(0, 9);
      expect(told(twist(tilted)).asRead).toBeCloseTo(0, 9);
    }
  });

  it('are what a hand works out from the readings', () => {
    const read = (at: (x: number, side: number) => number) => ({
      ...body,
      stations: body.stations.map((station) => ({
        ...station,
        asRead: [at(station.x, 0), at(station.x, 1)] as [number, number],
      })),
    });
    // Ends 8 mm up: the center lies 8 mm low. Front left 6 up and front right 6 down: ½ (6 − −6) = 6.
    expect(told(sag(read((x) => (x === 0 || x === 4000 ? 8 : 0)))).asRead).toBeCloseTo(-8, 9);
    expect(told(twist(read((x, side) => (x === 0 ? (side === 0 ? 6 : -6) : 0)))).asRead).toBeCloseTo(6, 9);
  });

  it('have the mean and the variance of the state that they combine', () => {
    const contrast = sumOf([2, entry(0)], [-1, meanOfAll([entry(2), entry(3)])]);
    const [part] = partsOf(body, [contrast]);
    const explanation = body.judged.found.explanations[0]?.explanation;
    const weights = [2, 0, -0.5, -0.5];
    let [mean, variance] = [0, 0];
    const n = explanation?.mean.length ?? 0;
    weights.forEach((w, i) => {
      mean += w * (explanation?.mean[i] ?? 0);
      weights.forEach((v, j) => (variance += w * v * (explanation?.covariance[i * n + j] ?? 0)));
    });
    expect(part?.mean[0]).toBeCloseTo(mean, 12);
    expect(part?.covariance[0]).toBeCloseTo(variance, 12);
  });
});

describe('a mixture', () => {
  const normal = (mean: number[], covariance: number[], weight = 1): Part => ({
    weight,
    mean: Float64Array.from(mean),
    covariance: Float64Array.from(covariance),
  });

  it('gives the probability of a quadrant', () => {
    // P(X > 0, Y > 0) of a standard bivariate normal = 1/4 + asin(ρ) / 2π (Sheppard 1899).
    for (const rho of [-0.8, -0.3, 0, 0.5, 0.9])
      expect(
        Math.abs(
          allBeyond([normal([0, 0], [1, rho, rho, 1])], [0, 0], 1) - 0.25 - Math.asin(rho) / (2 * Math.PI),
        ),
      ).toBeLessThan(0.004);
  });

  it('gives quantiles of one and of several normal distributions', () => {
    expect(quantile([normal([3], [4])], 0.975)).toBeCloseTo(3 + 2 * 1.959964, 5);
    const two = [normal([-10], [1], 0.5), normal([10], [1], 0.5)];
    expect(meanOf(two)).toBe(0);
    expect(quantile(two, 0.25)).toBeCloseTo(-10, 6);
  });

  it('takes contrasts that depend on each other', () => {
    expect(allBeyond([normal([1, 1], [1, 1, 1, 1])], [0, 0], 1)).toBeCloseTo(0.8413, 3);
  });
});
