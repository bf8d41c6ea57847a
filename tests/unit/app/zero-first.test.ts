import { expect, test } from 'vitest';
import { zeroFirst } from '@/app/jobs/[job]/_parts/zero-first';
import type { RoundVerdict } from '@/lib/assess';

const check = (action: string, setup: string) => ({ action, setup });
const verdict = (pZeroMisset: number) =>
  ({
    pZeroMisset,
    heights: [
      { setup: 'Z', zero: true },
      { setup: 'S', zero: false },
    ],
    nextChecks: [check('rehang', 'S'), check('other-technician', 'Z'), check('rehang', 'Z')],
  }) as unknown as RoundVerdict;

test('a zero gauge that is likely mis-set is hung again before anything else', () => {
  expect(zeroFirst(verdict(0.8)).map(({ action, setup }) => `${action} ${setup}`)).toEqual([
    'rehang Z',
    'rehang S',
    'other-technician Z',
  ]);
});

test('otherwise the checks keep the order of what they tell', () => {
  expect(zeroFirst(verdict(0.49))).toEqual(verdict(0.49).nextChecks);
});
