import { describe, expect, it } from 'vitest';
import { analyseTrial, ownPart, type TrialReading } from '@/lib/assess/trials';
import { Random } from '@/tests/simulation/random';

/** Each hangs three times at each of two points and reads twice; hands differ in reading, setting and bias. */
function trial(hands: Record<string, { reading: number; setting: number; bias: number }>): TrialReading[] {
  const random = new Random(9);
  return Object.entries(hands).flatMap(([person, { reading, setting, bias }]) =>
    ['P', 'Q'].flatMap((point) =>
      ['1', '2', '3'].flatMap((setup) => {
        const hung = bias + random.normal(0, setting);
        return [1, 2].map(() => ({ person, point, setup, value: hung + random.normal(0, reading) }));
      }),
    ),
  );
}
const A = { reading: 0.1, setting: 0.4, bias: 1 };
const B = { reading: 0.4, setting: 1, bias: -1 };
const C = { reading: 0.2, setting: 0.7, bias: 0 };

describe('the own part of a trial', () => {
  const readings = trial({ A, B, C });
  const own = ownPart(readings, 'A', 3);

  it('has the figures that whoever runs the trial sees of this person', () => {
    const seen = analyseTrial(readings, 3).people.find(({ person }) => person === 'A');
    expect(own?.reading).toEqual(seen?.reading);
    expect(own?.hanging).toEqual(seen?.hanging);
    expect(own?.bias).toEqual(seen?.bias);
  });

  it('has a setting error of its own hangings alone, less than that of a mean of two readings', () => {
    // Balanced, so REML is the analysis of variance: the mean square of the hangings at a point over two readings.
    const { hanging, reading, setting } = own ?? {};
    const expected = (hanging?.value ?? NaN) ** 2 - (reading?.value ?? NaN) ** 2 / 2;
    expect((setting?.value ?? NaN) ** 2).toBeCloseTo(expected, 6);
    expect(setting?.low ?? NaN).toBeLessThan(setting?.value ?? NaN);
    expect(setting?.high ?? NaN).toBeGreaterThan(setting?.value ?? NaN);
  });

  it('names nobody, and holds no hanging of anybody else', () => {
    expect(JSON.stringify(own)).not.toMatch(/"[BC]"/);
    expect(own?.hangings).toHaveLength(6);
  });

  it('stands beside all together where three took part', () => {
    const { reading, setting } = analyseTrial(readings, 3).components;
    expect(own?.band).toEqual({ reading, setting });
  });

  it('is told without band and bias where the other would be one colleague', () => {
    const two = ownPart(trial({ A, B }), 'A', 3);
    expect(two?.band).toBeNull();
    expect(two?.bias.value).toBeNull();
    expect(two?.bias.why).toContain('colleague');
    expect(two?.reading.value).not.toBeNull();
  });

  it('says why there is no setting where no point was hung twice, or every hanging read once', () => {
    const once = readings.filter(({ setup }) => setup === '1');
    expect(ownPart(once, 'A', 3)?.setting.why).toContain('No point was hung twice');
    const seen = new Set<string>();
    const single = readings.filter(({ person, point, setup }) => {
      const key = `${person} ${point} ${setup}`;
      return seen.has(key) ? false : seen.add(key);
    });
    expect(ownPart(single, 'A', 3)?.setting.why).toContain('cannot be told apart');
  });

  it('is nothing for somebody who hung nothing', () => {
    expect(ownPart(readings, 'D', 3)).toBeNull();
  });
});
