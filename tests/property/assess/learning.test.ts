import { beforeAll, describe, expect, it } from 'vitest';
import { assessRound, assessShop, learn, type Learned } from '@/lib/assess';
import { startingPoint } from '@/lib/assess/cause/learned';
import type { Cause, Job } from '@/lib/measure/types';
import { coverage, type Recovered, recovered } from '@/tests/simulation/recovery';
import { roundOf } from '@/tests/simulation/round';
import {
  calibrationError,
  classRatesLoss,
  damageCalledGauge,
  logLoss,
  type Scored,
  scored,
} from '@/tests/simulation/score';
import { simulateShop, type SimulatedShop } from '@/tests/simulation/shop';

const SEEDS = [1, 2, 3];
const LEARNED_FROM = 120;
const JUDGED = 30;

/** Every number of the learned parameters. */
function numbers(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbers);
}

describe('a shop of 120 jobs and five technicians, three times', () => {
  const truths: Recovered[] = [];
  const verdicts: Scored[] = [];
  let first: { shop: SimulatedShop; learned: Learned } | undefined;
  beforeAll(() => {
    for (const seed of SEEDS) {
      const shop = simulateShop({ seed, jobs: LEARNED_FROM + JUDGED, technicians: 5 });
      const known = shop.jobs.slice(0, LEARNED_FROM);
      const learned = learn(known);
      truths.push(...recovered(shop, known, learned));
      verdicts.push(...scored(shop, shop.jobs.slice(LEARNED_FROM), learned));
      first ??= { shop, learned };
    }
  }, 120_000);
  const of = (what: Recovered['what']): Recovered[] => truths.filter((one) => one.what === what);
  const rms = (all: readonly Recovered[], error: (one: Recovered) => number): number =>
    Math.sqrt(all.reduce((sum, one) => sum + error(one) ** 2, 0) / all.length);

  it('has 95 % intervals that hold the truth (66 of 69 with these seeds)', () => {
    expect(truths.length).toBe(3 * (3 * 5 + 8));
    expect(coverage(truths)).toBeGreaterThan(0.9);
    for (const what of ['reading', 'setting', 'bias', 'gauge bias'] as const)
      expect(coverage(of(what)), what).toBeGreaterThanOrEqual(0.85);
  });

  it('has intervals no wider than they need be', () => {
    // An error in units of its own standard error is one at the root mean square; far less would be idle width.
    for (const what of ['reading', 'setting', 'bias', 'gauge bias'] as const) {
      const z = rms(of(what), ({ estimate, truth, low, high }) => (estimate - truth) / ((high - low) / 3.92));
      expect(z, what).toBeGreaterThan(0.6);
      expect(z, what).toBeLessThan(1.5);
    }
  });

  it('finds reading and setting sds to a tenth and biases to a fifth of a millimetre', () => {
    const relative = ({ estimate, truth }: Recovered): number => estimate / truth - 1;
    const absolute = ({ estimate, truth }: Recovered): number => estimate - truth;
    expect(rms(of('reading'), relative)).toBeLessThan(0.06);
    expect(rms(of('setting'), relative)).toBeLessThan(0.12);
    expect(rms(of('bias'), absolute)).toBeLessThan(0.2);
    expect(rms(of('gauge bias'), absolute)).toBeLessThan(0.2);
  });

  it('tells the steadiest hand from the least steady', () => {
    const one = of('setting').slice(0, 5);
    const by = (value: (r: Recovered) => number): string[] =>
      [...one].sort((a, b) => value(a) - value(b)).map(({ who }) => who);
    const [steadiest] = by(({ estimate }) => estimate);
    const [truth] = by((r) => r.truth);
    expect(steadiest).toBe(truth);
  });

  it('judges rounds it has not learned from far better than the class rates do', () => {
    expect(verdicts.length).toBeGreaterThan(1000);
    expect(classRatesLoss(verdicts)).toBeGreaterThan(0.85);
    expect(logLoss(verdicts)).toBeLessThan(0.4 * classRatesLoss(verdicts));
  });

  it('means its probabilities: expected calibration error below 0.02', () => {
    expect(calibrationError(verdicts)).toBeLessThan(0.02);
  });

  it('rarely calls damage a gauge', () => {
    expect(damageCalledGauge(verdicts)).toBeLessThan(0.06);
  });

  it('judges better than a shop that has learned nothing', () => {
    if (!first) throw new Error('Nothing was learned.');
    const { shop, learned } = first;
    const jobs = shop.jobs.slice(LEARNED_FROM, LEARNED_FROM + 12);
    expect(logLoss(scored(shop, jobs, learned))).toBeLessThan(logLoss(scored(shop, jobs, startingPoint())));
  });
});

describe('a small shop', () => {
  it('of ten jobs has finite answers near where all shops start, with wide intervals', () => {
    const shop = simulateShop({ seed: 9, jobs: 10, technicians: 3 });
    const learned = learn(shop.jobs);
    for (const value of numbers(learned)) expect(Number.isFinite(value)).toBe(true);
    const start = startingPoint();
    for (const { code } of shop.technicians) {
      const hand = learned.technicians[code];
      if (!hand) continue;
      expect(hand.setting).toBeGreaterThan(start.newTechnician.setting / 4);
      expect(hand.setting).toBeLessThan(start.newTechnician.setting * 4);
      expect(hand.settingLogSe).toBeGreaterThan(0.05);
      expect(hand.missetRate).toBeGreaterThan(0.005);
      expect(hand.missetRate).toBeLessThan(0.25);
      expect(Math.abs(hand.bias)).toBeLessThan(2);
      expect(hand.biasSe).toBeGreaterThan(0.1);
    }
    const { before } = learned.bodies;
    before.impacts.forEach(({ share }, i) =>
      expect(Math.abs(share - (start.bodies.before.impacts[i]?.share ?? NaN))).toBeLessThan(0.35),
    );
    for (const weights of [learned.missetSizes, learned.damageSizes, Object.values(learned.missets)])
      expect(weights.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
  });

  it('of one job draws a new hand towards the start', () => {
    const learned = learn(simulateShop({ seed: 4, jobs: 1, technicians: 1 }).jobs);
    for (const hand of Object.values(learned.technicians)) {
      expect(hand.setting).toBeGreaterThan(0.4);
      expect(hand.setting).toBeLessThan(2.5);
      expect(hand.missetRate).toBeCloseTo(0.06, 1);
    }
  });

  it('without jobs is the starting point', () => {
    const learned = learn([]);
    expect(learned.rounds).toBe(0);
    expect(learned.missets).toEqual(startingPoint().missets);
    const nothing = assessShop([]);
    expect(nothing.rounds).toEqual([]);
    expect(nothing.technicians).toEqual([]);
    expect(nothing.firstTimeRight.rate).toBeNull();
  });

  it('without heights knows its readings and says why it knows no settings', () => {
    const jobs: Job[] = [
      {
        job: 'J1',
        sheet: null,
        rounds: [
          roundOf({
            hung: [],
            lengths: [
              { point: 'K-N', deviation: 0.4, n: 3 },
              { point: 'C-E', deviation: 5, n: 2 },
            ],
          }),
        ],
      },
    ];
    const { technicians, rounds } = assessShop(jobs);
    expect(technicians[0]?.repeatability.sd).not.toBeNull();
    expect(technicians[0]?.setting.sd).toBeNull();
    expect(technicians[0]?.setting.why).toContain('no gauge');
    expect(rounds[0]?.heights).toEqual([]);
    for (const value of numbers(learn(jobs))) expect(Number.isFinite(value)).toBe(true);
  });
});

describe('what re-checks proved', () => {
  /** Forty rounds; in every second one the rear is out on both sides, high or low, and nobody hung the gauge again. */
  const jobs = (cause: Cause | null): Job[] =>
    Array.from({ length: 40 }, (_, i) => {
      const wobble = ((i * 7) % 11) / 10 - 0.5;
      const out = i % 2 === 0 ? (i % 4 === 0 ? 1 : -1) * (5 + ((i * 5) % 8)) : 0;
      const gauge = (k: number): string => `G${1 + ((i + k) % 4)}`;
      return {
        job: `J${i}`,
        sheet: null,
        rounds: [
          {
            ...roundOf({
              hung: [
                { at: 1100, zero: true, left: 0, right: 0.1, gauge: gauge(0) },
                { at: 2600, zero: true, left: 0.1, right: 0, gauge: gauge(1) },
                { at: 0, left: wobble, right: -wobble, n: [2, 2], gauge: gauge(2) },
                {
                  at: 3100,
                  left: out + wobble,
                  right: out + 0.2,
                  n: [2, 2],
                  gauge: gauge(3),
                  ...(cause !== null && out !== 0 ? { cause } : {}),
                },
              ],
            }),
            job: `J${i}`,
          },
        ],
      };
    });
  const rear = (learned: Learned): Record<Cause, number> | undefined =>
    assessRound(
      roundOf({
        hung: [
          { at: 1100, zero: true, left: 0, right: 0 },
          { at: 2600, zero: true, left: 0, right: 0 },
          { at: 0, left: 0.2, right: -0.2, n: [2, 2] },
          { at: 3100, left: -6, right: -5.9, n: [2, 2] },
        ],
      }),
      learned,
    ).heights.find((height) => height.station === 3100)?.p;

  it('moves what is thought of the next height that nobody has hung again', () => {
    const gauge = learn(jobs('gauge'));
    const unknown = learn(jobs(null));
    const body = learn(jobs('body'));
    const rate = (learned: Learned): number => learned.technicians.T1?.missetRate ?? NaN;
    expect(rate(gauge)).toBeGreaterThan(rate(unknown));
    expect(rate(body)).toBeLessThanOrEqual(rate(unknown));
    // Without any re-check these rounds cannot tell gauge from body, so only the order is asked for there.
    const odds = (learned: Learned): number => (rear(learned)?.gauge ?? NaN) / (rear(learned)?.body ?? NaN);
    expect(odds(gauge)).toBeGreaterThan(odds(unknown));
    expect(odds(body)).toBeLessThanOrEqual(odds(unknown));
    expect(rear(gauge)?.gauge).toBeGreaterThan(0.7);
    expect(rear(body)?.body).toBeGreaterThan(0.7);
  });
});

describe('learning', () => {
  const shop = simulateShop({ seed: 12, jobs: 15, technicians: 3 });
  const before = structuredClone(shop.jobs);
  let plain: Learned;
  beforeAll(() => {
    plain = learn(shop.jobs);
  });

  it('is the same each time, and does not touch the jobs', () => {
    expect(learn(shop.jobs)).toEqual(plain);
    expect(shop.jobs).toEqual(before);
  });

  it('does not depend on what technicians and gauges are called', () => {
    const renamed: Job[] = structuredClone(shop.jobs);
    for (const job of renamed)
      for (const round of job.rounds)
        for (const setup of round.setups) {
          setup.technician = `${setup.technician === 'T01' ? 'z' : 'a'}${setup.technician}`;
          setup.gauge = `g${setup.gauge}`;
        }
    const other = learn(renamed);
    for (const [name, hand] of Object.entries(plain.technicians)) {
      const twin = other.technicians[`${name === 'T01' ? 'z' : 'a'}${name}`];
      expect(twin?.setting).toBeCloseTo(hand.setting, 6);
      expect(twin?.bias).toBeCloseTo(hand.bias, 6);
    }
  });

  it('tells how far it has come, from 0 to 1', () => {
    const told: number[] = [];
    learn(shop.jobs.slice(0, 3), { onProgress: (done) => told.push(done) });
    expect(told[0]).toBe(0);
    expect(told.at(-1)).toBe(1);
    told.slice(1).forEach((done, i) => expect(done).toBeGreaterThanOrEqual(told[i] ?? NaN));
  });
});
