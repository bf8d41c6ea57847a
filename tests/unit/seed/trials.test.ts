import { expect, it } from 'vitest';
import { compareTrials, runSheet, type TrialReading } from '@/lib/assess/trials';
import { DEMO_SEED, demoTrials, type DemoTrial } from '@/seed';

function asRead({ plan, readings }: DemoTrial): TrialReading[] {
  const points = plan.points.map(({ name }) => name);
  const lines = runSheet({ ...plan, points });
  return readings.flatMap(({ run, value }) => {
    const line = lines[run - 1];
    const nominal = plan.points.find(({ name }) => name === line?.point)?.value ?? 0;
    return line === undefined ? [] : [{ ...line, value: value - nominal }];
  });
}

it('the trials before and after the training show that QUI sets with less scatter, and that nobody else changed', () => {
  const [before, after] = demoTrials(DEMO_SEED).map(asRead) as [TrialReading[], TrialReading[]];
  expect(compareTrials(before, after, 'QUI').hanging.high).toBeLessThan(1);
  for (const other of ['ASH', 'FEL']) {
    const { low, high } = compareTrials(before, after, other).hanging;
    expect(low, other).toBeLessThan(1);
    expect(high, other).toBeGreaterThan(1);
  }
});
