import { describe, expect, it } from 'vitest';
import { assessRound, learn, type RoundVerdict } from '@/lib/assess';
import { firstReadings, type HabitCell, type HabitKey, habitMatrix, HABITS } from '@/lib/assess/habits';
import { collapse } from '@/lib/measure';
import { demoShop } from '@/seed';
import { type HandHabits, habitShop, type HabitShop, habitTallies } from '@/tests/simulation/habit-shop';
import { PLANTED } from '@/tests/simulation/planted';
import { tallyShop } from '@/tests/simulation/tally-shop';

/*
 * The table in DEVELOPERS.md. Takes minutes, so it is started by hand:
 *
 *     REHANG_SHOPS=300 npx vitest run --project pure tests/unit/assess-habits/at-size.test.ts
 *
 * As many shops without habits, and a tenth as many with a hand for each habit, and again with habits of half the size. REHANG_JOBS (40) are measured by each
 * hand. REHANG_CHAIN=yes takes the verdicts that the program comes to instead of those of somebody who knows the
 * truth, and looks at the demo shop too; a shop then takes half a minute.
 */
const SHOPS = Number(process.env.REHANG_SHOPS ?? 0);
const JOBS = Number(process.env.REHANG_JOBS ?? 40);
const CHAIN = process.env.REHANG_CHAIN === 'yes';

function said({ jobs }: Pick<HabitShop, 'jobs'>): RoundVerdict[] {
  const learned = learn(jobs);
  return jobs.flatMap((job) => job.rounds.map((round) => assessRound(round, learned)));
}

function cellsOf(seed: number, hands: Record<string, HandHabits>): HabitCell[] {
  const shop = habitShop({ seed, jobs: JOBS * Object.keys(hands).length, hands });
  return habitMatrix(habitTallies(shop, CHAIN ? said(shop) : shop.verdicts));
}

const plain = (count: number): Record<string, HandHabits> =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`o${i + 1}`, {}]));
const planted = (size: 'hand' | 'half'): Record<string, HandHabits> =>
  Object.fromEntries(HABITS.map((habit) => [habit, PLANTED[habit][size]]));

const percent = (count: number, of: number): string => `${((100 * count) / of).toFixed(of < 200 ? 0 : 1)} %`;

describe.skipIf(SHOPS === 0)('many shops', () => {
  it('have the false alarms and the power that DEVELOPERS.md states', { timeout: 7_200_000 }, () => {
    const without = Array.from({ length: SHOPS }, (_, i) => cellsOf(10_000 + i, plain(6)));
    const shopsWith = (size: 'hand' | 'half'): HabitCell[] =>
      Array.from({ length: Math.ceil(SHOPS / 10) }, (_, i) =>
        cellsOf(50_000 + i, { ...planted(size), ...plain(3) }),
      ).flat();
    const whole = shopsWith('hand');
    const half = shopsWith('half');
    const power = (cells: readonly HabitCell[], habit: HabitKey): string => {
      const own = cells.filter((cell) => cell.habit === habit && cell.technician === habit);
      return percent(own.filter(({ state }) => state === 'found').length, own.length);
    };
    const lines = HABITS.map((habit) => {
      const p = without.flat().flatMap((cell) => (cell.habit === habit && cell.p !== null ? [cell.p] : []));
      const below = (level: number): string => percent(p.filter((value) => value < level).length, p.length);
      return `| \`${habit}\` | ${below(0.05)} | ${below(0.005)} | ${PLANTED[habit].size} | ${power(whole, habit)} | ${power(half, habit)} |`;
    });
    const findings = [...whole, ...half].filter(({ state }) => state === 'found');
    const wrong = findings.filter(({ habit, technician }) => habit !== technician);
    const any = without.filter((cells) => cells.some(({ state }) => state === 'found')).length;
    console.log(
      [
        ...lines,
        `shops without habits that have a finding: ${any} of ${SHOPS}`,
        `wrong findings where there are habits: ${wrong.length} of ${findings.length}`,
        ...wrong.map(({ habit, technician, adjustedP }) => `  ${technician}: ${habit} ${adjustedP}`),
      ].join('\n'),
    );
    expect(any / SHOPS).toBeLessThan(0.05 + 3 * Math.sqrt(0.05 / SHOPS));
    expect(wrong.length / findings.length).toBeLessThan(0.07);
  });

  it.runIf(CHAIN)(
    'and the demo shop shows its planted habits by its own verdicts',
    { timeout: 600_000 },
    () => {
      const { readings } = demoShop();
      const jobs = collapse(readings);
      const cells = habitMatrix(tallyShop(jobs, said({ jobs }), firstReadings(readings)));
      expect(
        cells.flatMap(({ technician, habit, state }) =>
          state === 'found' ? [`${technician} ${habit}`] : [],
        ),
      ).toEqual(['ASH preferred-digits', 'MAR clearance-forgotten', 'THI heights-first', 'WIN low-hanger']);
    },
  );
});
