import { expect, it } from 'vitest';
import { fewQuestions, frozen, onceFor } from '@/lib/memory';

it('does its work once for the same objects and values', () => {
  let done = 0;
  const of = onceFor(
    (list: readonly number[], other: object | null, times: number, name: string | undefined) => {
      done++;
      return { sum: list.reduce((all, one) => all + one * times, 0), other, name };
    },
  );
  const [list, other] = [[1, 2], {}];
  expect(of(list, other, 2, undefined)).toBe(of(list, other, 2, undefined));
  expect(done).toBe(1);
  expect(of(list, other, 2, undefined).sum).toBe(6);
});

it('does it anew where an object is another, though it says the same, or a value differs in kind', () => {
  const of = onceFor((list: readonly number[], with_: object | string | number | null | undefined) => ({
    list,
    with_,
  }));
  const [list, other] = [[1], {}];
  const first = of(list, 1);
  for (const made of [
    of([1], 1),
    of(list, '1'),
    of(list, null),
    of(list, undefined),
    of(list, other),
    of(list, {}),
  ])
    expect(made).not.toBe(first);
  expect(of(list, other).with_).toBe(other);
});

it('remembers that nothing came of it', () => {
  let done = 0;
  const of = onceFor((_: object) => {
    done++;
    return undefined;
  });
  const one = {};
  expect([of(one), of(one), done]).toEqual([undefined, undefined, 1]);
});

it('remembers the questions that were asked last, and no more', () => {
  let answered = 0;
  const ask = fewQuestions((question: { month: string | undefined; by: number }) => {
    answered++;
    return question.by;
  });
  expect([ask({ month: '2025-03', by: 1 }), ask({ month: '2025-03', by: 1 }), answered]).toEqual([1, 1, 1]);
  expect([ask({ month: '2025-03', by: 2 }), answered]).toEqual([2, 2]);
  for (let by = 3; by < 103; by++) ask({ month: undefined, by });
  expect(answered).toBe(102);
  ask({ month: undefined, by: 102 });
  expect(answered).toBe(102);
  ask({ month: '2025-03', by: 1 });
  expect(answered).toBe(103);
});

it('is frozen to its depth, and the same object', () => {
  const value = { list: [{ name: 'a' }], none: null, text: 'b' };
  expect(frozen(value)).toBe(value);
  expect([value, value.list, value.list[0]].every((part) => Object.isFrozen(part))).toBe(true);
  expect([frozen(null), frozen('a'), frozen(undefined)]).toEqual([null, 'a', undefined]);
});
