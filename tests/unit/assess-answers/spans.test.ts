import { describe, expect, it } from 'vitest';
import {
  atWork,
  habitSpan,
  handSpan,
  jobShare,
  habitMonth,
  handMonth,
  monthQuestion,
  MonthSums,
  type WorkMonth,
} from '@/lib/assess/answers';
import { settingErrors } from '@/lib/assess/answers/setting-errors';
import { startingPoint } from '@/lib/assess/cause/learned';
import { firstReadings, habitMatrix } from '@/lib/assess/habits';
import { tallyShop } from '@/tests/simulation/tally-shop';
import { habitShop } from '@/tests/simulation/habit-shop';

const shop = habitShop({ seed: 5, jobs: 60, hands: { A: { leftLow: 2 }, B: {}, C: {} } });
const jobs = shop.jobs.map((job, i) => ({ ...job, sheet: i % 2 === 0 ? 'Coupe' : 'Estate' }));
const firsts = firstReadings(shop.readings);
const learned = startingPoint();
const { bodies } = atWork(jobs, learned);
const sums = new MonthSums('UTC');
for (const job of jobs) {
  const verdicts = shop.verdicts.filter((verdict) => verdict.job === job.job);
  const share = jobShare(job, { learned, bodies, timeZone: 'UTC', verdicts, firsts: firsts.get(job.job) });
  if (share !== null) sums.add(share);
}
const documents = new Map<string, unknown>(sums.documents());
const documentOf = (question: string): unknown => documents.get(question);
const months = sums.months();
const sheets = ['Coupe', 'Estate'];
const habitsOf = (sheet?: string) =>
  months.flatMap((month) => {
    const sums = habitMonth(documentOf, month, sheet);
    return sums === null ? [] : [sums];
  });
const handsOf = (held: readonly string[], sheet?: string) =>
  held.flatMap((month) => {
    const hands = handMonth(documentOf, month, sheet);
    return hands === null ? [] : [{ month, hands }];
  });
const close = (a: number | null | undefined, b: number | null | undefined) =>
  expect(a ?? NaN).toBeCloseTo(b ?? NaN, 9);

describe('sums by month', () => {
  it('know their months and sheets', () => {
    expect(months.length).toBeGreaterThan(1);
    const worked = months.map((month) => documents.get(monthQuestion('work', month)) as WorkMonth);
    expect([...new Set(worked.flatMap((work) => work.sheets))].sort()).toEqual(sheets);
  });

  it('of all months together show the habits that the whole history shows', () => {
    const whole = habitMatrix(tallyShop(jobs, shop.verdicts, firsts));
    const summed = habitSpan(habitsOf());
    expect(summed.map(({ technician, habit, state }) => [technician, habit, state])).toEqual(
      whole.map(({ technician, habit, state }) => [technician, habit, state]),
    );
    summed.forEach(({ p }, i) => {
      if (p !== null) close(p, whole[i]?.p);
    });
    expect(summed.some(({ state }) => state === 'found')).toBe(true);
  });

  it('of one sheet hold the jobs by that sheet alone', () => {
    const wanted = jobs.filter(({ sheet }) => sheet === 'Coupe');
    const whole = habitMatrix(tallyShop(wanted, shop.verdicts, firsts));
    const summed = habitSpan(habitsOf('Coupe'));
    expect(summed.map(({ setups }) => setups)).toEqual(whole.map(({ setups }) => setups));
  });
});

describe('a hand within some months', () => {
  const errors = jobs.flatMap((job) =>
    settingErrors(
      job,
      shop.verdicts.filter((verdict) => verdict.job === job.job),
    ),
  );
  const own = errors.flat().filter(({ technician }) => technician === 'A');
  const scatter = (values: readonly number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  };

  it('has over all of them the scatter of all its settings, and each round once in its mean', () => {
    const found = handSpan('A', handsOf(months), {});
    close(found?.setting.sd, scatter(own.map(({ error }) => error)));
    const rounds = errors
      .map((round) => round.filter(({ technician }) => technician === 'A').map(({ error }) => error))
      .filter((round) => round.length > 0)
      .map((round) => round.reduce((sum, value) => sum + value, 0) / round.length);
    expect(found?.rounds).toBe(rounds.length);
    close(found?.mean.mean, rounds.reduce((sum, value) => sum + value, 0) / rounds.length);
  });

  it('has its repeats with the gauge untouched', () => {
    const setups = jobs.flatMap(({ rounds }) =>
      rounds.flatMap((round) => round.setups.filter(({ technician }) => technician === 'A')),
    );
    const seen = setups.flatMap(({ observations }) => observations);
    const df = seen.reduce((sum, { n }) => sum + n - 1, 0);
    const ss = seen.reduce((sum, one) => sum + one.ss, 0);
    const found = handSpan('A', handsOf(months), {});
    expect(found?.repeatability.df).toBe(df);
    close(found?.repeatability.sd, Math.sqrt(ss / df));
  });

  it('has with one gauge in one section the settings there alone', () => {
    const [{ gauge, section } = { gauge: '', section: 'front' as const }] = own;
    const there = own.filter((error) => error.gauge === gauge && error.section === section);
    expect(there.length).toBeLessThan(own.length);
    const found = handSpan('A', handsOf(months), { gauge, section });
    close(found?.setting.sd, scatter(there.map(({ error }) => error)));
    expect(found?.places.gauge.map(({ name }) => name)).toEqual([gauge]);
  });

  it('has by the sheets apart the settings that it has by both', () => {
    const counts = sheets.map((sheet) => handSpan('A', handsOf(months, sheet), {})?.setting.df ?? 0);
    expect(counts.reduce((sum, df) => sum + df + 1, 0)).toBe(own.length);
  });

  it('is shown beside the shop where three technicians stand behind that, and not beside one colleague', () => {
    expect(handSpan('A', handsOf(months), {})?.shop).not.toBeNull();
    const two = handsOf(months).map(({ month, hands }) => ({
      month,
      hands: hands.filter(({ technician }) => technician !== 'C'),
    }));
    const found = handSpan('A', two, {});
    expect(found?.shop).toBeNull();
    expect(found?.shopWhy).toContain('colleague');
    expect(found?.quarters.every(({ shop: band }) => band === null)).toBe(true);
  });

  it('that it did nothing in is not there', () => {
    expect(handSpan('A', [], {})).toBeNull();
    expect(handSpan('NOBODY', handsOf(months), {})).toBeNull();
  });
});
