import { describe, expect, it } from 'vitest';
import {
  byPlace,
  byQuarter,
  handShares,
  practiseNext,
  toAThird,
  type Hand,
  type HandCell,
} from '@/lib/assess/my-hand';
import { collapse, sdInterval } from '@/lib/stats';
import { Random } from '@/tests/simulation/random';

const sd = (value: number, df = 40) => ({ sd: value, df, ...sdInterval(value, df) });
const hand = (reading: number, setting: number, bias = 0, half = 0.1): Hand => ({
  repeatability: sd(reading),
  setting: sd(setting),
  bias: { mean: bias, low: bias - half, high: bias + half, why: null },
});

describe('handShares', () => {
  it('a reading sd of 0.3 mm and a setting sd of 0.4 mm take 30, 40 and 50 % of ± 3 mm', () => {
    const { repeatability, setting, both } = handShares(hand(0.3, 0.4), 3);
    expect(repeatability.share).toBeCloseTo(0.3, 12);
    expect(setting.share).toBeCloseTo(0.4, 12);
    expect(both.share).toBeCloseTo(0.5, 12);
    expect(both.low).toBeGreaterThan(setting.low ?? NaN);
    expect(both.high).toBeLessThan(Math.hypot(repeatability.high ?? NaN, setting.high ?? NaN));
  });

  it('the interval of both covers the truth in about 95 of 100 seeded hands', () => {
    const random = new Random(2);
    const chi = (df: number) =>
      Array.from({ length: df }, () => random.normal() ** 2).reduce((a, b) => a + b, 0);
    let held = 0;
    for (let run = 0; run < 2000; run++) {
      const of = (truth: number, df: number) => sd(truth * Math.sqrt(chi(df) / df), df);
      const { both } = handShares({ ...hand(1, 1), repeatability: of(0.4, 20), setting: of(0.7, 8) }, 3);
      const truth = Math.hypot(0.4, 0.7);
      if ((both.low ?? 9) <= truth && truth <= (both.high ?? 0)) held++;
    }
    expect(held / 2000).toBeGreaterThan(0.935);
    expect(held / 2000).toBeLessThan(0.985);
  });

  it('has no share where nothing was read twice, and says so; refuses a tolerance of nothing', () => {
    const none = { sd: null, df: null, low: null, high: null, why: 'Nothing was read twice.' };
    expect(handShares({ ...hand(1, 1), repeatability: none }, 3).both.why).toBe('Nothing was read twice.');
    expect(() => handShares(hand(1, 1), 0)).toThrow(/tolerance above zero/);
  });
});

describe('toAThird', () => {
  it('readings are enough where the setting is below the goal, and one fewer is not', () => {
    const { goal, readings, sentence } = toAThird(hand(0.8, 0.3), 3, 1);
    expect(goal).toBe(0.5);
    // 0.3² + 0.8²/n ≤ 0.5² from n = 4 on.
    expect(readings).toBe(4);
    expect(Math.hypot(0.3, 0.8 / Math.sqrt(4))).toBeLessThanOrEqual(0.5 + 1e-12);
    expect(Math.hypot(0.3, 0.8 / Math.sqrt(3))).toBeGreaterThan(0.5);
    expect(sentence).toMatch(/^Read 4 times in one hanging/);
  });

  it('readings alone cannot do it where the setting is larger, and it says why and how many hangings can', () => {
    const { readings, hangings, surely, sentence } = toAThird(hand(0.4, 0.9), 3, 2);
    expect(readings).toBeNull();
    expect(hangings).toBe(Math.ceil((0.81 + 0.08) / 0.25));
    expect(surely.hangings).toBeGreaterThan(hangings ?? NaN);
    expect(sentence).toMatch(
      /same in every reading of a hanging\. The mean of 4 hangings \(\d to be sure\) can/,
    );
  });

  it('says that a bias stays, and that one hanging can be enough', () => {
    expect(toAThird(hand(0.1, 0.2, 0.6), 3, 2).sentence).toMatch(
      /^One hanging read twice is enough.*A bias of 0\.60 mm/,
    );
    expect(toAThird(hand(1, 5), 3, 2).sentence).toMatch(/practise setting first/);
  });
});

function cells(random: Random, scatter: (section: string, gauge: string) => number): HandCell[] {
  return (['front', 'center', 'rear'] as const).flatMap((section) =>
    (['L', 'R'] as const).flatMap((side) =>
      ['C1', 'C2'].map((gauge, g): HandCell => {
        const values = Array.from({ length: 20 }, () => random.normal(0, scatter(section, gauge)));
        const { n, mean, ss } = collapse(values);
        const distance = section === 'center' ? 0 : section === 'front' ? 400 + 300 * g : 1800;
        return { section, side, gauge, distance, n, mean, ss, readingDf: 20, readingSs: 20 * 0.09 };
      }),
    ),
  );
}

describe('byPlace', () => {
  it('finds the gauge that is set less surely, with the ratio and its interval', () => {
    const places = byPlace(
      cells(new Random(4), (_, gauge) => (gauge === 'C2' ? 1.2 : 0.6)),
      'gauge',
    );
    expect(places.map(({ name, lessSure }) => [name, lessSure])).toEqual([
      ['C1', false],
      ['C2', true],
    ]);
    expect(places[1]?.low).toBeLessThan(2);
    expect(places[1]?.high).toBeGreaterThan(2);
    expect(places[0]?.repeatability.sd).toBeCloseTo(0.3, 12);
  });

  it('calls no place less sure in 95 of 100 hands that are alike everywhere', () => {
    const random = new Random(6);
    let called = 0;
    for (let run = 0; run < 300; run++) {
      if (
        byPlace(
          cells(random, () => 0.8),
          'section and side',
        ).some(({ lessSure }) => lessSure)
      )
        called++;
    }
    expect(called / 300).toBeLessThan(0.08);
  });

  it('orders distances from the zero span outwards and places by name', () => {
    const all = cells(new Random(1), () => 1);
    expect(byPlace(all, 'distance from the zero span').map(({ name }) => name)).toEqual([
      'stations within the zero span',
      'stations up to 500 mm out',
      'stations 500 to 1000 mm out',
      'stations beyond 1500 mm',
    ]);
    expect(byPlace(all, 'section and side')[0]?.name).toBe('center left');
    expect(byPlace([], 'gauge')).toEqual([]);
  });

  it('adds cells in any grouping to the same number of settings', () => {
    const all = cells(new Random(1), () => 1);
    for (const kind of ['gauge', 'section and side', 'distance from the zero span'] as const) {
      expect(byPlace(all, kind).reduce((sum, { setups }) => sum + setups, 0)).toBe(240);
    }
  });
});

describe('byQuarter', () => {
  const quarter = (name: string) => ({
    ...{ quarter: name, reading: { df: 30, ss: 2.7 }, setting: { n: 12, mean: 0.2, ss: 5.5 } },
  });

  it('shows the band of three technicians or more and withholds that of two', () => {
    const [first, second, third] = byQuarter(
      [quarter('2025 Q1'), quarter('2025 Q2'), quarter('2025 Q3')],
      [
        { ...quarter('2025 Q1'), technicians: 3 },
        { ...quarter('2025 Q2'), technicians: 2 },
      ],
    );
    expect(first?.own.repeatability.sd).toBeCloseTo(0.3, 12);
    expect(first?.shop?.setting.low).toBeLessThan(0.71);
    expect(second?.shop).toBeNull();
    expect(second?.shopWhy).toMatch(/a colleague’s/);
    expect(third?.shop).toBeNull();
  });
});

describe('practiseNext', () => {
  it.each([
    ['bias', hand(0.3, 0.5, 1.2), /too high \(1\.10 mm to 1\.30 mm\)/],
    ['bias', hand(0.3, 0.5, -1.2), /too low \(1\.10 mm to 1\.30 mm\)/],
    ['setting', hand(0.3, 0.9), /^Practise setting and hanging: it scatters 0\.90 mm/],
    ['reading', hand(0.9, 0.3), /^Practise reading/],
    ['nothing', hand(0.2, 0.3), /Keep hanging again what is out/],
    ['setting', hand(0.3, 0.9, 1.2, 1.5), /^Practise setting/],
  ] as const)('%s, where that is what the evidence shows', (what, own, words) => {
    const practice = practiseNext(own, [], 3);
    expect(practice.what).toBe(what);
    expect(practice.sentence).toMatch(words);
  });

  it('names the place where the setting scatters more than elsewhere beyond chance', () => {
    const places = byPlace(
      cells(new Random(4), (section) => (section === 'rear' ? 1.8 : 0.6)),
      'distance from the zero span',
    );
    expect(practiseNext(hand(0.3, 0.9), places, 3)).toMatchObject({ what: 'place' });
    expect(practiseNext(hand(0.3, 0.9), places, 3).sentence).toMatch(
      /^Practise setting at stations beyond 1500 mm/,
    );
  });

  it('says what is missing where a hand is not known', () => {
    const none = { sd: null, df: null, low: null, high: null, why: 'No gauge was hung.' };
    expect(practiseNext({ ...hand(1, 1), setting: none }, [], 3).sentence).toMatch(
      /^No gauge was hung\. Read every/,
    );
  });
});
