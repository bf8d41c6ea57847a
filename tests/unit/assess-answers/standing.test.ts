import { describe, expect, it } from 'vitest';
import {
  atWork,
  changedHands,
  jobShare,
  habitMonth,
  handMonth,
  monthQuestion,
  monthsOfJob,
  MonthSums,
  Standing,
  type JobShare,
  type WorkMonth,
  type YearChange,
} from '@/lib/assess/answers';
import type { SettingError } from '@/lib/assess/answers/setting-errors';
import { startingPoint } from '@/lib/assess/cause/learned';
import { firstReadings } from '@/lib/assess/habits';
import { varianceRoot } from '@/lib/stats';
import { habitShop } from '@/tests/simulation/habit-shop';

/** One round in each job, all of January. */
const ofRounds = (...rounds: SettingError[][]): Standing =>
  standingOf(
    rounds.map((errors, i) => ({
      ...{ job: `J${i}`, begunAt: JANUARY, sheet: null, tallies: [], missets: [] },
      ...{ rate: null, risk: null, riskFrom: null },
      measured: { hands: [], gauges: [], outcome: null },
      rounds: [{ at: JANUARY, repeats: [], errors }],
    })),
  );
const JANUARY = Date.UTC(2026, 0, 15);

const errors = (...mm: number[]): SettingError[] =>
  mm.map((error) => ({
    ...{ technician: 'A', gauge: 'C1', at: JANUARY, section: 'front', side: 'L', distance: 0, error },
    ...{ readingDf: 0, readingSs: 0 },
  }));

const standingOf = (shares: readonly JobShare[]): Standing => taken(new Standing(), shares);

/** Takes all years of these jobs anew, or what of them changed. */
function taken(standing: Standing, shares: readonly JobShare[], change?: YearChange): Standing {
  const sums = new MonthSums('UTC');
  for (const share of shares) sums.add(share);
  const documents = new Map<string, unknown>(sums.documents());
  const documentOf = (question: string): unknown => documents.get(question);
  const months = sums.months().map((month) => ({
    month,
    habits: habitMonth(documentOf, month) ?? [],
    hands: handMonth(documentOf, month) ?? [],
    hanging: (handMonth(documentOf, month) ?? []).map(({ technician }) => technician),
    work: documentOf(monthQuestion('work', month)) as WorkMonth,
  }));
  for (const year of new Set(months.map(({ month }) => month.slice(0, 4))))
    standing.setYear(
      year,
      months.filter(({ month }) => month.startsWith(year)),
      change,
    );
  return standing;
}

const seriesOf = (standing: Standing, what: string, name: string) =>
  standing.series().find((one) => one.what === what && one.subject.name === name)?.periods;

it('a round counts once for a bias, however many heights share its datum, and only what lies within it for scatter', () => {
  const standing = ofRounds(errors(1, 2, 3), errors(-1, 1));
  // Means of the rounds 2 and 0.
  const bias = [{ period: '2026-01', n: 2, mean: 1, ss: 2 }];
  expect(seriesOf(standing, 'setting-bias', 'A')).toEqual(bias);
  expect(seriesOf(standing, 'setting-bias', 'C1')).toEqual(bias);
  // Squares within them 2 and 2, on 2 and 1 degrees of freedom: their cube roots are averaged.
  const roots = [varianceRoot({ df: 2, ss: 2 }), varianceRoot({ df: 1, ss: 2 })].flatMap((one) => one ?? []);
  const weight = roots.reduce((sum, one) => sum + one.weight, 0);
  const root = roots.reduce((sum, one) => sum + one.root * one.weight, 0) / weight;
  const scatter = seriesOf(standing, 'setting-scatter', 'A')?.[0];
  expect(scatter).toMatchObject({ period: '2026-01', n: 4, mean: 0 });
  expect(varianceRoot({ df: 3, ss: scatter?.ss ?? NaN })?.root).toBeCloseTo(root, 12);
});

it('a datum that is off by the same for a whole round leaves the scatter as it is', () => {
  const scatterOf = (...mm: number[]) => seriesOf(ofRounds(errors(...mm)), 'setting-scatter', 'A')?.[0]?.ss;
  expect(scatterOf(5, 6, 7)).toBeCloseTo(scatterOf(0, 1, 2) ?? NaN, 12);
});

const history = habitShop({ seed: 5, jobs: 40, hands: { A: { leftLow: 2 }, B: {}, C: {} } });
const shares = sharesOf(history);

function sharesOf({ jobs, verdicts, readings }: typeof history): JobShare[] {
  const firsts = firstReadings(readings);
  const learned = startingPoint();
  const { bodies } = atWork(jobs, learned);
  return jobs.flatMap((job) => {
    const own = verdicts.filter((verdict) => verdict.job === job.job);
    const context = { learned, bodies, timeZone: 'UTC', verdicts: own, firsts: firsts.get(job.job) };
    return jobShare(job, context) ?? [];
  });
}

const stands = (of: Standing) => ({
  ...{ tallies: of.tallies(), series: of.series(), choices: of.choices(), quarters: of.shopQuarters() },
  ...{ hands: of.measured().hands(), gauges: of.measured().gauges() },
  ...{ rates: of.rates(), risks: of.risks() },
  shown: of.shown('A', 'low-hanger:left'),
  each: ['A', 'B', 'C'].map((code) => [of.cells(code), of.quarters(code), of.missets(code)]),
});

/** What of the years changed where one job adds something else. */
const changeOf = (before: JobShare | null, after: JobShare): YearChange => ({
  technicians: changedHands(before, after),
  months: new Set(
    [before, after].flatMap((share) => [...(share ? monthsOfJob(share, 'UTC') : [])].map(([m]) => m)),
  ),
});

it('after a job came in, only the sums of its technicians taken anew stand where all taken anew stand', () => {
  const [late, ...before] = shares;
  if (late === undefined) throw new Error('There is no job.');
  const standing = standingOf(before);
  const earlier = stands(standing);
  const change = changeOf(null, late);
  expect(change.technicians.size).toBeLessThan(3);
  const after = stands(taken(standing, shares, change));
  expect(after).toEqual(stands(standingOf(shares)));
  expect(after.shown).not.toEqual([]);
  expect(after).not.toEqual(earlier);
});

it.each(shares.slice(0, 12).map((share, i) => [i, share] as const))(
  'after one round of job %i was read again, only what that changes taken anew stands where all taken anew stand',
  (i, share) => {
    const rounds = share.rounds.map((round, at) => ({
      ...round,
      errors: round.errors.map((one) => (at === 0 ? { ...one, error: one.error + 0.25 } : one)),
    }));
    const changed = shares.with(i, { ...share, rounds });
    const standing = standingOf(shares);
    const [earlier, series] = [stands(standing), standing.series()];
    const change = changeOf(share, { ...share, rounds });
    expect(change.technicians).toEqual(new Set(share.rounds[0]?.errors.map(({ technician }) => technician)));
    const after = stands(taken(standing, changed, change));
    expect(after).toEqual(stands(standingOf(changed)));
    expect(after).not.toEqual(earlier);
    // What is the same is the same object, so that nothing is made of it again.
    expect(standing.series().some((one) => series.includes(one))).toBe(true);
  },
);

it('rates and risks that say the same, their fields in another order, stay the same objects', () => {
  const standing = standingOf(shares);
  const [rates, risks] = [standing.rates(), standing.risks()];
  expect(rates.some(({ right }) => right)).toBe(true);
  const turned = <Of extends object>(of: Of | null): Of | null =>
    of && (Object.fromEntries(Object.entries(of).reverse()) as Of);
  const same = shares.map((share) => ({ ...share, rate: turned(share.rate), risk: turned(share.risk) }));
  taken(standing, same);
  expect(standing.rates()).toBe(rates);
  expect(standing.risks()).toBe(risks);
});

describe('whose sums change', () => {
  const [share] = shares;
  if (share === undefined) throw new Error('There is no job.');
  const everybody = changedHands(null, share);

  it('is nobody’s where a job adds the same, and everybody’s where it is new or gone', () => {
    expect(changedHands(share, structuredClone(share))).toEqual(new Set());
    expect(everybody.size).toBeGreaterThan(0);
    expect(changedHands(share, null)).toEqual(everybody);
  });

  it('is everybody’s where the job counts at another time or for another sheet', () => {
    expect(changedHands(share, { ...share, begunAt: share.begunAt - 1 })).toEqual(everybody);
    expect(changedHands(share, { ...share, sheet: 'another' })).toEqual(everybody);
    const rounds = share.rounds.map((round) => ({ ...round, at: round.at + 1 }));
    expect(changedHands(share, { ...share, rounds })).toEqual(everybody);
  });
});
