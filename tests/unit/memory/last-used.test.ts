import { expect, it } from 'vitest';
import { LastUsed } from '@/lib/memory';

const held = (of: LastUsed<string>, ...names: string[]) => names.filter((name) => of.get(name) !== undefined);

it('lets go what was used longest ago, a look at it being a use', () => {
  const memory = new LastUsed<string>(6, (text) => text.length);
  for (const name of ['a', 'b', 'c']) memory.set(name, '..');
  memory.get('a');
  memory.set('d', '..');
  expect(held(memory, 'a', 'b', 'c', 'd')).toEqual(['a', 'c', 'd']);
});

it('counts a value once, however often it is put there, and not after it was deleted or all was cleared', () => {
  const memory = new LastUsed<string>(6, (text) => text.length);
  for (let times = 0; times < 9; times++) memory.set('a', '..');
  memory.set('b', '....');
  expect(held(memory, 'a', 'b')).toEqual(['a', 'b']);
  memory.delete('b');
  memory.delete('b');
  memory.set('c', '....');
  expect(held(memory, 'a', 'b', 'c')).toEqual(['a', 'c']);
  memory.clear();
  memory.set('d', '......');
  expect(held(memory, 'a', 'c', 'd')).toEqual(['d']);
});

it('keeps the value that came last, even one that there is no room for', () => {
  const memory = new LastUsed<string>(6, (text, name) => text.length + name.length);
  memory.set('a', '..');
  memory.set('long', '..........');
  expect(held(memory, 'a', 'long')).toEqual(['long']);
});
