import { expect, it } from 'vitest';
import { sameFrom } from '@/lib/memory';

const [a, b, c] = [{ name: 'a' }, { name: 'b' }, { name: 'c' }];
const together = () =>
  sameFrom((all: readonly { name: string }[]) => ({ names: all.map(({ name }) => name) }));

it('gives the same object again for the same objects in the same order', () => {
  const of = together();
  expect(of([a, b])).toBe(of([a, b]));
  expect(of([a, b]).names).toEqual(['a', 'b']);
});

it('makes it anew where an object is another, though it says the same, or where one came or went', () => {
  const of = together();
  for (const others of [[a, { ...b }], [{ ...a }, b], [a], [a, b, c], [b, a]])
    expect(of(others)).not.toBe(of([a, b]));
  expect(of([a]).names).toEqual(['a']);
  expect(of([a, b, c]).names).toEqual(['a', 'b', 'c']);
});

it('makes of nothing what there is to make', () => {
  expect(together()([]).names).toEqual([]);
});
