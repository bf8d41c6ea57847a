import { expect, it } from 'vitest';
import { MADE_FROM, MadeFrom } from '@/lib/refresh/made-from';
import { saveFit, saveFitAnswers } from '@/lib/store';
import { freshStore } from '../store/fresh-store';

const store = freshStore();

it('an answer is kept as long as what it was made from is the same, the program, the fit and the time zone included', async () => {
  const { id } = await saveFit(store.shop, { inputsVersion: 1, parameters: {}, figures: {} });
  const fit = { id, program: 'this' };
  const first = await MadeFrom.of(store.shop, fit, 'UTC');
  expect(first.revision).toBeNull();
  expect(first.isKept('what-if', [1, { a: 2, b: 3 }])).toBe(false);
  await saveFitAnswers(store.shop, id, { choices: {}, [MADE_FROM]: first.after('first') });

  const again = async (change: { program?: string } = {}, timeZone = 'UTC') =>
    MadeFrom.of(store.shop, { ...fit, ...change }, timeZone);
  const same = await again();
  expect(same.revision).toBe('first');
  // A server gives the fields of an object back in its own order.
  expect(same.isKept('what-if', [1, { b: 3, a: 2 }])).toBe(true);
  expect(same.isKept('what-if', [1, { b: 3, a: 4 }])).toBe(false);
  expect(same.isKept('risk', [1])).toBe(false);
  for (const other of [await again({ program: 'another' }), await again({}, 'Europe/Zurich')]) {
    expect(other.revision).toBeNull();
    expect(other.isKept('what-if', [1, { a: 2, b: 3 }])).toBe(false);
  }
});
