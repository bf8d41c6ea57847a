import { describe, expect, it } from 'vitest';
import {
  analyseTrial,
  compareTrials,
  planTrial,
  runSheet,
  trialPower,
  type TrialReading,
} from '@/lib/assess/trials';
import { personBiases } from '@/lib/assess/trials/biases';
import { hangingsOf } from '@/lib/assess/trials/cells';
import power from '@/tests/reference/data/10-power/power.json';
import { Random } from '@/tests/simulation/random';

interface Truth {
  reading: number;
  setting: number;
  bias: Record<string, number>;
  points?: number;
  setups?: number;
  readings?: number;
  /** Sd of what a person does differently from point to point. */
  atPoint?: number;
}

function trial(random: Random, truth: Truth): TrialReading[] {
  const { points = 5, setups = 3, readings = 2, atPoint = 0 } = truth;
  const bodies = Array.from({ length: points }, () => random.normal(0, 4));
  return Object.entries(truth.bias).flatMap(([person, bias]) =>
    bodies.flatMap((body, point) => {
      const own = random.normal(0, atPoint);
      return Array.from({ length: setups }, (_, setup) => {
        const set = random.normal(0, truth.setting);
        return Array.from({ length: readings }, () => ({
          ...{ person, point: `P${point}`, setup: String(setup + 1) },
          value: body + bias + own + set + random.normal(0, truth.reading),
        }));
      }).flat();
    }),
  );
}

describe('planTrial', () => {
  it('a bias between two people at one point is the two-sample t test of R power.t.test', () => {
    const cases = power.t_test.filter(
      ({ type, strict, sig_level }) => type === 'two.sample' && !strict && sig_level === 0.05,
    );
    expect(cases.length).toBeGreaterThan(2);
    for (const one of cases) {
      // A hanging read once: its scatter is setting and reading together.
      const scatter = { setting: one.sd * 0.8, reading: one.sd * 0.6 };
      const size = { points: 1, people: 2, setups: one.n, readings: 1 };
      const found = trialPower({ question: 'bias', difference: one.delta }, size, scatter);
      expect(found).toBeCloseTo(one.power_at_n, 8);
      const plan = planTrial(
        { question: 'bias', difference: one.delta },
        { points: 1, people: 2, readings: 1 },
        scatter,
        {
          power: one.power,
          most: 80,
        },
      );
      expect(plan.size?.setups).toBe(one.n);
    }
  });

  it('the power of a training is the share of seeded trials that show it', () => {
    const random = new Random(3);
    const size = { points: 4, people: 1, setups: 4, readings: 2 };
    const expected = trialPower({ question: 'training', ratio: 0.5 }, size, { reading: 0.4, setting: 0.8 });
    let shown = 0;
    for (let run = 0; run < 500; run++) {
      const of = (share: number) =>
        trial(random, { reading: 0.4 * share, setting: 0.8 * share, bias: { T1: 0 }, points: 4, setups: 4 });
      const { hanging } = compareTrials(of(1), of(0.5), 'T1');
      if ((hanging.high ?? 9) < 1) shown++;
    }
    expect(Math.abs(shown / 500 - expected)).toBeLessThan(3 * Math.sqrt(0.25 / 500));
  });

  it('more hangings never have less power, and the plan names the whole work', () => {
    for (const asked of [
      { question: 'bias', difference: 0.8 },
      { question: 'repeatability', ratio: 1.5 },
      { question: 'setting', ratio: 1.6 },
      { question: 'training', ratio: 0.5 },
    ] as const) {
      const plan = planTrial(asked, { points: 4, people: 3, readings: 2 }, { reading: 0.4, setting: 0.7 });
      plan.options
        .slice(2)
        .forEach((option, i) => expect(option.power).toBeGreaterThanOrEqual(plan.options[i + 1]?.power ?? 1));
      expect(plan.hangings).toBe(12 * (plan.size?.setups ?? NaN));
      expect(plan.sentence).toMatch(/^3 people at 4 points, \d+ hangings? each with 2 readings/);
    }
  });

  it('says where no trial of that kind is enough, and refuses what cannot be asked', () => {
    const size = { points: 2, people: 2, readings: 1 };
    const none = planTrial({ question: 'bias', difference: 0.05 }, size, { reading: 0.5, setting: 1 });
    expect(none).toMatchObject({ size: null, hangings: null });
    expect(none.sentence).toMatch(/take more points/);
    const scatter = { reading: 0.5, setting: 1 };
    expect(() => planTrial({ question: 'repeatability', ratio: 1.5 }, size, scatter)).toThrow(/read twice/);
    expect(() => planTrial({ question: 'bias', difference: 1 }, { ...size, people: 1 }, scatter)).toThrow(
      /two people/,
    );
    expect(() => planTrial({ question: 'training', ratio: 1.2 }, size, scatter)).toThrow(/between 0 and 1/);
  });
});

describe('runSheet', () => {
  const input = {
    points: ['A', 'B', 'C', 'D'],
    people: ['T1', 'T2', 'T3'],
    setups: 3,
    readings: 2,
    seed: 42,
  };
  const lines = runSheet(input);

  it('holds every person at every point once in each round of hangings', () => {
    expect(lines).toHaveLength(36);
    const keys = lines.map(({ person, point, setup }) => `${person} ${point} ${setup}`);
    expect(new Set(keys).size).toBe(36);
    expect(lines.map(({ order }) => order)).toEqual(Array.from({ length: 36 }, (_, i) => i + 1));
  });

  it('never sends two people to one point at a time, and lets all begin equally often', () => {
    const slots = Array.from({ length: 12 }, (_, i) => lines.slice(3 * i, 3 * i + 3));
    for (const slot of slots) expect(new Set(slot.map(({ point }) => point)).size).toBe(3);
    const begun = input.people.map((person) => slots.filter(([first]) => first?.person === person).length);
    expect(begun).toEqual([4, 4, 4]);
  });

  it('is the same for the same seed and another for another', () => {
    expect(runSheet(input)).toEqual(lines);
    expect(runSheet({ ...input, seed: 43 })).not.toEqual(lines);
  });

  it('puts each point at each place of the work equally often over many seeds', () => {
    const firsts = Array.from(
      { length: 2000 },
      (_, seed) => runSheet({ ...input, setups: 1, seed })[0]?.point,
    );
    for (const point of input.points) {
      expect(Math.abs(firsts.filter((first) => first === point).length - 500)).toBeLessThan(80);
    }
  });

  it('refuses a name that is on the list twice', () => {
    expect(() => runSheet({ ...input, people: ['T1', 'T1'] })).toThrow(/T1 is on the list twice/);
  });
});

describe('analyseTrial', () => {
  it('a balanced trial has the components that expected mean squares give by hand', () => {
    const readings = trial(new Random(12), {
      ...{
        reading: 0.4,
        setting: 0.8,
        bias: { T1: -1.2, T2: 0.3, T3: 1.5 },
        points: 6,
        setups: 4,
        readings: 3,
        atPoint: 1,
      },
    });
    const found = analyseTrial(readings, 3).components;
    const [P, O, S, R] = [6, 3, 4, 3];
    const mean = (of: (one: TrialReading) => boolean) => {
      const values = readings.filter(of).map(({ value }) => value);
      return values.reduce((a, b) => a + b, 0) / values.length;
    };
    const names = { person: ['T1', 'T2', 'T3'], point: Array.from({ length: P }, (_, i) => `P${i}`) };
    const grand = mean(() => true);
    let [ssPoint, ssPerson, ssBoth, ssSetup, ssReading] = [0, 0, 0, 0, 0];
    for (const point of names.point) ssPoint += O * S * R * (mean((one) => one.point === point) - grand) ** 2;
    for (const person of names.person)
      ssPerson += P * S * R * (mean((one) => one.person === person) - grand) ** 2;
    for (const person of names.person) {
      for (const point of names.point) {
        const cell = mean((one) => one.person === person && one.point === point);
        const rest = cell - mean((one) => one.person === person) - mean((one) => one.point === point) + grand;
        ssBoth += S * R * rest ** 2;
        for (let s = 1; s <= S; s++) {
          const at = (one: TrialReading) =>
            one.person === person && one.point === point && one.setup === String(s);
          const setup = mean(at);
          ssSetup += R * (setup - cell) ** 2;
          for (const { value } of readings.filter(at)) ssReading += (value - setup) ** 2;
        }
      }
    }
    const ms = {
      point: ssPoint / (P - 1),
      person: ssPerson / (O - 1),
      both: ssBoth / ((P - 1) * (O - 1)),
      setup: ssSetup / (P * O * (S - 1)),
      reading: ssReading / (P * O * S * (R - 1)),
    };
    expect(found.reading.value).toBeCloseTo(Math.sqrt(ms.reading), 6);
    expect(found.setting.value).toBeCloseTo(Math.sqrt((ms.setup - ms.reading) / R), 6);
    expect(found.technicianAtPoint.value).toBeCloseTo(Math.sqrt((ms.both - ms.setup) / (S * R)), 6);
    expect(found.technician.value).toBeCloseTo(Math.sqrt((ms.person - ms.both) / (P * S * R)), 6);
    expect(found.point.value).toBeCloseTo(Math.sqrt((ms.point - ms.both) / (O * S * R)), 6);
  });

  it('its bias intervals hold the true bias in about 95 of 100 seeded trials', () => {
    const random = new Random(5);
    let held = 0;
    for (let run = 0; run < 400; run++) {
      const [bias] = personBiases(
        hangingsOf(
          trial(random, { reading: 0.4, setting: 0.8, bias: { T1: 0.5, T2: -0.5 }, points: 3, setups: 2 }),
        ),
      );
      if ((bias?.low ?? 9) <= 0.5 && 0.5 <= (bias?.high ?? -9)) held++;
    }
    expect(held / 400).toBeGreaterThan(0.93);
  });

  it('says in sentences what it shows: shares, groups, who reads higher beyond chance', () => {
    const readings = trial(new Random(8), { reading: 0.2, setting: 0.3, bias: { T1: 0, T2: 0, T3: 1.5 } });
    const { sentences, shareOfTolerance } = analyseTrial(readings, 3);
    expect(sentences.join(' ')).toMatch(
      /Reading again, gauge untouched, scatters 0\.\d\d mm \(0\.\d\d to 0\.\d\d\)/,
    );
    expect(sentences.some((sentence) => /^T3 reads higher/.test(sentence))).toBe(true);
    expect(shareOfTolerance.low).toBeLessThan(shareOfTolerance.value ?? NaN);
    expect(shareOfTolerance.high).toBeGreaterThan(shareOfTolerance.value ?? NaN);
  });

  it('tells reading and setting apart only where a hanging was read twice', () => {
    const once = trial(new Random(8), { reading: 0.2, setting: 0.3, bias: { T1: 0, T2: 0 }, readings: 1 });
    const { components } = analyseTrial(once, 3);
    expect(components.reading.why).toMatch(/read once/);
    expect(components.setting.value).toBeGreaterThan(0.2);
  });

  it('answers for one person, for an uneven trial, and not for nothing', () => {
    const alone = analyseTrial(trial(new Random(8), { reading: 0.2, setting: 0.3, bias: { T1: 0 } }), 3);
    expect(alone.people[0]?.bias.why).toMatch(/nobody to compare/);
    expect(alone.components.setting.value).toBeGreaterThan(0.1);
    const uneven = trial(new Random(8), { reading: 0.2, setting: 0.3, bias: { T1: 0, T2: 1 } }).slice(0, -3);
    expect(analyseTrial(uneven, 3).shareOfTolerance).toMatchObject({ low: null, high: null });
    expect(() => analyseTrial([], 3)).toThrow(/no readings yet/);
  });
});

describe('compareTrials', () => {
  it('says that a training helped, by how much, and that the bias went', () => {
    const random = new Random(21);
    const of = (setting: number, bias: number) =>
      trial(random, { reading: 0.3, setting, bias: { T1: bias }, points: 6, setups: 6 });
    const bodies = of(1.2, 1);
    const after = of(0.4, 1);
    const { hanging, sentences } = compareTrials(bodies, after, 'T1');
    expect(hanging.high).toBeLessThan(1);
    expect(sentences[1]).toMatch(
      /^Hanging and reading of T1 scatters 0\.\d\d times as much as before .*: better beyond chance\.$/,
    );
  });

  it('takes off what moved for everybody', () => {
    const readings = trial(new Random(4), { reading: 0.2, setting: 0.3, bias: { T1: 1, T2: 0, T3: 0 } });
    const moved = readings.map((one) => ({ ...one, value: one.value + 5 - (one.person === 'T1' ? 1 : 0) }));
    const { bias, others } = compareTrials(readings, moved, 'T1');
    expect(others).toBe(2);
    expect(bias.value).toBeCloseTo(-1, 10);
    expect(bias.low).toBeLessThan(-1);
    const alone = compareTrials(
      readings.filter(({ person }) => person === 'T1'),
      moved,
      'T1',
    );
    expect(alone.bias.value).toBeCloseTo(4, 10);
    expect(alone.sentences[2]).toMatch(/must not have moved/);
  });

  it('says why where trials cannot be compared', () => {
    const readings = trial(new Random(4), { reading: 0.2, setting: 0.3, bias: { T1: 1 } });
    const once = readings.filter((_, i) => i % 2 === 0);
    expect(compareTrials(readings, once, 'T1').hanging.why).toMatch(/equally often/);
    expect(compareTrials(readings, [], 'T1').bias.why).toMatch(/No point/);
  });
});
