import { expect, test } from 'vitest';
import { addedCounts, missetsIn } from '@/lib/assess/answers/misset-counts';
import type { HeightVerdict, RoundVerdict } from '@/lib/assess';
import { simulateShop } from '../../simulation/shop';

const height = (setup: string, gauge: number, zero = false) =>
  ({ setup, zero, p: { neither: 1 - gauge, gauge, body: 0, both: 0 } }) as HeightVerdict;

test('a setup counts once, mis-set when one of its heights likely is, in the month of the shop', () => {
  const [job] = simulateShop({ seed: 1, jobs: 1, technicians: 1 }).jobs;
  const [round] = job?.rounds ?? [];
  const [setup] = round?.setups ?? [];
  if (job === undefined || round === undefined || setup === undefined) throw new Error('There is no round.');
  const hung = (label: string, takenAt: number) => ({
    ...setup,
    label,
    takenAt,
    technician: 'T',
    gauge: 'C1',
  });
  const setups = [
    hung('S1', Date.UTC(2025, 2, 31, 22, 30)),
    hung('S2', Date.UTC(2025, 2, 31, 23, 30)),
    hung('Z1', Date.UTC(2025, 3, 2)),
    hung('unread', Date.UTC(2025, 3, 2)),
  ];
  const heights = [height('S1', 0.9), height('S1', 0.1), height('S2', 0.1), height('Z1', 0.9, true)];
  const verdict = { ...round, heights } as unknown as RoundVerdict;
  const counted = missetsIn({ ...job, rounds: [{ ...round, setups }] }, [verdict], 'Europe/London');
  expect(new Set(counted.map(([technician]) => technician))).toEqual(new Set(['T']));
  // 23:30 UTC on 31 March is half past midnight on 1 April in London's summer time.
  expect(addedCounts(counted.map(([, count]) => count))).toEqual([
    { month: '2025-03', gauge: 'C1', setups: 1, misset: 1 },
    { month: '2025-04', gauge: 'C1', setups: 1, misset: 0 },
  ]);
});
