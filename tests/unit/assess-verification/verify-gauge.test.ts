import { describe, expect, it } from 'vitest';
import { againstReference, verifyGauge, type GaugeEvent, type Verification } from '@/lib/assess/verification';
import { conformity } from '@/lib/stats';
import { Random } from '@/tests/simulation/random';

const DAY = 86_400_000;
const verification = (day: number, error: number, uncertainty = 0.1): Verification => ({
  at: day * DAY,
  error,
  uncertainty,
});
const event = (day: number, kind: GaugeEvent['kind']): GaugeEvent => ({ at: day * DAY, kind });
const LIMIT = { limit: 0.5 };

describe('the state of a gauge', () => {
  it.each([
    ['passes well inside its limit', [verification(0, 0.1)], [], 'in service'],
    ['fails well outside', [verification(0, 0.9)], [], 'out of service'],
    ['is not passed by a verification that decides nothing', [verification(0, 0.48)], [], 'not verified'],
    [
      'stays in service when the next one decides nothing',
      [verification(0, 0), verification(9, 0.48)],
      [],
      'in service',
    ],
    [
      'stays out when the next one decides nothing',
      [verification(0, 1), verification(9, 0.48)],
      [],
      'out of service',
    ],
    ['is out once dropped', [verification(0, 0)], [event(3, 'dropped')], 'out of service'],
    [
      'is in again once verified after it',
      [verification(0, 0), verification(4, 0)],
      [event(3, 'dropped')],
      'in service',
    ],
    ['is out when adjusted, until verified', [verification(0, 0)], [event(3, 'adjusted')], 'out of service'],
    ['is unknown without any', [], [], 'not verified'],
  ] as const)('%s', (_, verifications, events, state) => {
    expect(verifyGauge('C4', verifications, events, LIMIT).state).toBe(state);
  });

  it('says why and what to do', () => {
    const failed = verifyGauge('C4', [verification(0, 0.9)], [], LIMIT).sentence;
    expect(failed).toBe(
      'Gauge C4 is out of service until verified: it failed its verification. It was last +0.90 mm off (± 0.20 mm); ' +
        'that its error is within ± 0.5 mm has a probability of less than 0.01.',
    );
    const dropped = verifyGauge('C4', [verification(0, 0)], [event(1, 'dropped')], LIMIT).sentence;
    expect(dropped).toMatch(/^Gauge C4 is out of service until verified: it was reported dropped or bent\./);
    const open = verifyGauge('C4', [verification(0, 0), verification(2, 0.45)], [], LIMIT).sentence;
    expect(open).toMatch(/decides nothing: read it again/);
  });

  it('does not depend on the order in which things are told', () => {
    const list = [verification(0, 0), verification(9, 0.9), verification(20, 0.1)];
    const events = [event(3, 'dropped'), event(15, 'adjusted')];
    expect(verifyGauge('C4', [...list].reverse(), [...events].reverse(), LIMIT)).toEqual(
      verifyGauge('C4', list, events, LIMIT),
    );
  });

  it('has the probability of JCGM 106:2012', () => {
    const [called] = verifyGauge('C4', [verification(0, 0.4)], [], LIMIT).verifications;
    const { probability } = conformity({ value: 0.4, uncertainty: 0.1, lower: -0.5, upper: 0.5 });
    expect(called?.within).toBe(probability);
    expect(called?.call).toBe('undecided');
  });
});

describe('what a series shows', () => {
  const series = (random: Random, of: (day: number) => number) =>
    Array.from({ length: 14 }, (_, i) => verification(30 * i, of(30 * i) + random.normal(0, 0.08)));

  it('a drift with its interval, and when it may reach the limit', () => {
    const { drift, notes, state } = verifyGauge(
      'C4',
      series(new Random(2), (day) => 0.0008 * day),
      [],
      LIMIT,
    );
    expect(drift.low).toBeLessThan(0.08);
    expect(drift.high).toBeGreaterThan(0.08);
    expect(drift.low).toBeGreaterThan(0);
    expect(notes.join(' ')).toMatch(
      /It drifts by \+0\.\d\d mm \(0\.\d\d to 0\.\d\d\) in 100 days.*verify before that/,
    );
    expect(state).toBe('in service');
  });

  it('a step, its size and when', () => {
    const { step, notes } = verifyGauge(
      'C4',
      series(new Random(3), (day) => (day < 240 ? 0 : 0.3)),
      [],
      LIMIT,
    );
    expect(step.at).toBe(240 * DAY);
    expect(step.low).toBeLessThan(0.3);
    expect(step.high).toBeGreaterThan(0.3);
    expect(step.p).toBeLessThan(0.01);
    expect(notes[0]).toMatch(/^It stepped by \+0\.\d\d mm/);
  });

  it('nothing where nothing changes: drift or step is called in few of 150 seeded gauges', () => {
    const random = new Random(4);
    let [drifts, steps] = [0, 0];
    for (let run = 0; run < 150; run++) {
      const { drift, step } = verifyGauge(
        'C4',
        series(random, () => 0),
        [],
        LIMIT,
      );
      if ((drift.p ?? 1) <= 0.05) drifts++;
      if ((step.p ?? 1) <= 0.05) steps++;
    }
    expect(drifts / 150).toBeLessThan(0.1);
    expect(steps / 150).toBeLessThan(0.1);
  });

  it('starts anew after an adjustment', () => {
    const stepped = series(new Random(3), (day) => (day < 240 ? 0.4 : 0));
    const { chart, step } = verifyGauge('C4', stepped, [event(239, 'adjusted')], LIMIT);
    expect(chart.errors).toHaveLength(6);
    expect(step.p).toBeGreaterThan(0.05);
  });

  it('has no limits of a chart before six verifications, and marks the one that lies beyond', () => {
    expect(verifyGauge('C4', series(new Random(5), () => 0).slice(0, 5), [], LIMIT).chart.why).toMatch(
      /take 6/,
    );
    const quiet = [0.01, -0.02, 0, 0.02, -0.01, 0.01, 0, -0.02, 0.3].map((error, i) =>
      verification(i, error),
    );
    const { chart } = verifyGauge('C4', quiet, [], LIMIT);
    expect(chart.alarms).toContain(8 * DAY);
  });
});

describe('againstReference', () => {
  it('joins the scatter of the readings with the uncertainty of the reference', () => {
    const found = againstReference(0, [1000.2, 1000.4], { value: 1000, uncertainty: 0.05 });
    expect(found.error).toBeCloseTo(0.3, 10);
    // sd of two readings 0.2 apart is 0.2/√2; of their mean 0.1.
    expect(found.uncertainty).toBeCloseTo(Math.hypot(0.1, 0.05), 10);
    expect(againstReference(0, [1000.2], { value: 1000, uncertainty: 0 }, 0.3).uncertainty).toBe(0.3);
  });

  it('refuses one reading without a scatter', () => {
    expect(() => againstReference(0, [1000], { value: 1000, uncertainty: 0 })).toThrow(/read twice/);
    expect(() => againstReference(0, [], { value: 1000, uncertainty: 0 })).toThrow(/needs a reading/);
    expect(() => verifyGauge('C4', [], [], { limit: 0 })).toThrow(/limit of a gauge/);
  });
});
