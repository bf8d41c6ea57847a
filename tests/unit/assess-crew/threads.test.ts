import { afterAll, describe, expect, it } from 'vitest';
import { assessRound, type Learned } from '@/lib/assess';
import { threads } from '@/lib/assess/crew';
import { simulateShop } from '../../simulation/shop';
import { knownShop } from '../../simulation/known';

describe('a crew of threads', () => {
  const crew = threads(2);
  afterAll(() => crew.close());
  const rounds = simulateShop({ seed: 3, jobs: 2, technicians: 3 }).jobs.flatMap((job) => job.rounds);
  const tasks = rounds.map((round) => ({ round, unread: [] }));

  it('judges rounds the same as one thread does, to the last digit', async () => {
    const learned = knownShop();
    const parts = await Promise.all(tasks.map((task) => crew.assess({ rounds: [task], learned })));
    expect(parts.flat()).toEqual(rounds.map((round) => assessRound(round, learned)));
  });

  it('judges by what was learned each time, whatever a thread was told before', async () => {
    const one = threads(1);
    const [before, after] = [knownShop(), knownShop()];
    for (const hand of Object.values(after.technicians)) hand.setting *= 2;
    for (const learned of [before, after, { ...before }, after])
      expect(await one.assess({ rounds: tasks, learned })).toEqual(
        rounds.map((round) => assessRound(round, learned)),
      );
    await one.close();
  });

  it('gives what a thread throws to whoever asked', async () => {
    const faulty = threads(1);
    const nothing = {} as Learned;
    await expect(faulty.assess({ rounds: tasks, learned: nothing })).rejects.toThrow(TypeError);
    await expect(faulty.assess({ rounds: tasks, learned: nothing })).rejects.toThrow(/ended/);
    await faulty.close();
  });
});
