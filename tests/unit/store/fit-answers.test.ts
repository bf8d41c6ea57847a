import { describe, expect, it } from 'vitest';
import { fitAnswer, fitAnswers, hasFitAnswers, saveFit, saveFitAnswers } from '@/lib/store';
import { freshStore } from './fresh-store';

const store = freshStore();

const fit = async () =>
  (await saveFit(store.shop, { inputsVersion: 1, parameters: { format: 1 }, figures: {} })).id;

describe('answers of a fit', () => {
  it('are those saved last: changed, the same, new and gone ones', async () => {
    const id = await fit();
    await saveFitAnswers(store.shop, id, { rates: { a: 1 }, risk: [1, 2], habits: 'none', hands: null });
    await saveFitAnswers(store.shop, id, { rates: { a: 2 }, risk: [1, 2], signals: [], hands: null });
    expect(await fitAnswers(store.shop, 'rates', ['rates', 'risk', 'habits', 'signals'])).toEqual(
      new Map<string, unknown>([
        ['rates', { a: 2 }],
        ['risk', [1, 2]],
        ['signals', []],
      ]),
    );
    expect(await fitAnswer(store.shop, 'habits')).toBeNull();
    expect(await fitAnswer(store.shop, 'hands')).toBeNull();
  });

  it('go over to the next fit with its own, and the earlier fit keeps none', async () => {
    const first = await fit();
    await saveFitAnswers(store.shop, first, { rates: { a: 1 }, risk: [1], habits: 1 });
    const second = await fit();
    // Until the next fit has been asked, the newest answer is the earlier one's.
    expect(await fitAnswer(store.shop, 'rates')).toEqual({ a: 1 });
    await saveFitAnswers(store.shop, second, { rates: { a: 1 }, risk: [2] });
    expect(await hasFitAnswers(store.shop, first)).toBe(false);
    expect(await fitAnswers(store.shop, 'rates', ['rates', 'risk', 'habits'])).toEqual(
      new Map<string, unknown>([
        ['rates', { a: 1 }],
        ['risk', [2]],
      ]),
    );
  });

  it('of a fit that was let go are not kept', async () => {
    await saveFitAnswers(store.shop, 4711, { rates: 1 });
    expect(await fitAnswer(store.shop, 'rates')).toBeNull();
  });
});
