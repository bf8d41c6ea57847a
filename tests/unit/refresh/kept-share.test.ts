import { expect, it } from 'vitest';
import { atWork, jobShare, MonthSums } from '@/lib/assess/answers';
import { startingPoint } from '@/lib/assess/cause/learned';
import { keptShare, shareOf } from '@/lib/refresh/kept-share';
import { habitShop } from '@/tests/simulation/habit-shop';

const { jobs } = habitShop({ seed: 7, jobs: 6, hands: { A: {}, B: {} } });
const learned = startingPoint();
const { bodies } = atWork(jobs, learned);
const shares = jobs.flatMap(
  (job) => jobShare(job, { learned, bodies, timeZone: 'UTC', verdicts: [], firsts: undefined }) ?? [],
);
const sumsOf = (all: typeof shares, only: ConstructorParameters<typeof MonthSums>[1] = null) => {
  const sums = new MonthSums('UTC', only);
  for (const share of all) sums.add(share);
  return new Map<string, unknown>(sums.documents());
};

it('what a job adds is read back as it was', () => {
  expect(shares.map((share) => shareOf(keptShare(share)))).toEqual(shares);
});

it('with the tallies of one technician read, the sums of that one are those of all read, and no other can be summed', () => {
  const read = shares.map((share) => shareOf(keptShare(share), new Set(['B'])));
  const whole = sumsOf(shares);
  const asked = sumsOf(read, { questions: new Set(whole.keys()), technicians: new Set(['B']) });
  const habits = [...asked].filter(([question]) => question.includes('habits'));
  expect(habits.length).toBeGreaterThan(1);
  for (const [question, document] of asked) expect(document).toEqual(whole.get(question));
  expect(() => sumsOf(read)).toThrow('not asked for');
});
