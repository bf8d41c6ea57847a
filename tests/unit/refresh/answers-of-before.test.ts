import { expect, it } from 'vitest';
import type { Answers } from '@/lib/assess/answers';
import { AnswersOfBefore } from '@/lib/refresh/answers-of-before';
import { asJson } from '@/lib/refresh/stored-fit';
import { saveFit, saveFitAnswers } from '@/lib/store';
import { freshStore } from '../store/fresh-store';

const store = freshStore();

const nothing = (why: string): Answers['what-if'] => ({
  ...{ answer: null, why, without: [], farthest: null, gauges: 0, rests: null },
});

it('an answer is given again as long as what it was made from is the same, the fit included', async () => {
  const { id } = await saveFit(store.shop, { inputsVersion: 1, parameters: {}, figures: {} });
  const first = await AnswersOfBefore.of(store.shop, ['program', { sd: 1 }]);
  const answer = first.known('what-if', [1, 2], () => nothing('first'));
  expect(answer.why).toBe('first');
  await saveFitAnswers(store.shop, id, {
    ...{ choices: {}, 'what-if': asJson(answer) },
    ...first.madeFrom([7, '3 of 5']),
  });
  const asked = async (fit: unknown, madeFrom: unknown) =>
    (await AnswersOfBefore.of(store.shop, fit)).known('what-if', madeFrom, () => nothing('anew')).why;
  expect(await asked(['program', { sd: 1 }], [1, 2])).toBe('first');
  expect(await asked(['program', { sd: 1 }], [1, 3])).toBe('anew');
  expect(await asked(['program', { sd: 2 }], [1, 2])).toBe('anew');
  expect(await asked(['another', { sd: 1 }], [1, 2])).toBe('anew');
  const again = await AnswersOfBefore.of(store.shop, ['program', { sd: 1 }]);
  expect([again.restOn([7, '3 of 5']), again.restOn([7, '3 of 6'])]).toEqual([true, false]);
});
