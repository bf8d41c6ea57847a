import { afterAll, describe, expect, it } from 'vitest';
import { assessShop, type Learned } from '@/lib/assess';
import { assessShopTogether, threads } from '@/lib/assess/crew';
import type { RoundVerdict } from '@/lib/assess/types';
import { simulateShop } from '../../simulation/shop';

describe('a crew of threads', () => {
  const crew = threads(2);
  afterAll(() => crew.close());
  const { jobs } = simulateShop({ seed: 3, jobs: 21, technicians: 3 });

  it('works a shop out the same as one thread does, to the last digit, and tells how far it is', async () => {
    const told: number[] = [];
    const parts: RoundVerdict[][] = [];
    const together = await assessShopTogether(crew, jobs, {
      onJudged: (judged) => told.push(judged),
      onRounds: (part, rounds) => (parts[part] = rounds),
    });
    expect(together.rounds).toEqual([]);
    expect({ ...together, rounds: parts.flat() }).toEqual(assessShop(jobs));
    // Two parts, and no job lost between them.
    expect(told).toEqual([expect.any(Number), jobs.length]);
  });

  it('gives what a thread throws to whoever asked', async () => {
    const faulty = threads(1);
    const nothing = {} as Learned;
    await expect(faulty.judge({ jobs, learned: nothing, firsts: undefined })).rejects.toThrow(TypeError);
    await expect(faulty.judge({ jobs, learned: nothing, firsts: undefined })).rejects.toThrow(/ended/);
    await faulty.close();
  });
});
