import { expect, it } from 'vitest';
import { currentCharts, currentHand, currentRateJobs } from '@/lib/refresh';
import { saveFit, saveFitAnswers } from '@/lib/store';
import { freshStore } from '../store/fresh-store';

const store = freshStore();

it('answers that an earlier program kept whole are none, until the shop has learned by this one', async () => {
  const { id } = await saveFit(store.shop, { inputsVersion: 1, parameters: {}, figures: {} });
  await saveFitAnswers(store.shop, id, {
    choices: { months: ['2026-01'], sheets: [] },
    hands: [{ technician: 'A' }],
    'rate-jobs': [{ job: 'J1' }],
    'signal-charts': [],
  });
  expect(await currentHand(store.shop, 'A')).toBeNull();
  expect(await currentRateJobs(store.shop)).toBeNull();
  expect(await currentCharts(store.shop)).toBeNull();
});
