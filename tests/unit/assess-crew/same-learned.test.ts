import { expect, it } from 'vitest';
import { numberOf, SameLearned } from '@/lib/assess/crew';
import { knownShop } from '../../simulation/known';

it('knows what was learned again by its number, and takes it for no other', () => {
  const [one, other] = [knownShop(), knownShop()];
  expect(numberOf(one)).toBe(numberOf(one));
  expect(numberOf(other)).not.toBe(numberOf(one));
  const same = new SameLearned();
  const first = structuredClone(one);
  expect(same.of(numberOf(one), first)).toBe(first);
  expect(same.of(numberOf(one), structuredClone(one))).toBe(first);
  const second = structuredClone(other);
  expect(same.of(numberOf(other), second)).toBe(second);
  const third = structuredClone(one);
  expect(same.of(numberOf(one), third)).toBe(third);
});
