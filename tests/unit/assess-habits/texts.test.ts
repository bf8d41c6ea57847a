import { describe, expect, it } from 'vitest';
import { HABIT_TEXTS, HABITS } from '@/lib/assess/habits';

describe('the words of a habit', () => {
  it.each(HABITS)(
    '%s say what it is, how it shows, how to train it and what else looks the same',
    (habit) => {
      const { name, what, shows, train, lookalikes } = HABIT_TEXTS[habit];
      expect(name).toMatch(/^[A-Z][^.]+[^.]$/);
      for (const text of [what, shows, train, lookalikes]) expect(text).toMatch(/^[A-Z].{30,}\.$/);
    },
  );

  it('are of the habits that exist and no others', () => {
    expect(Object.keys(HABIT_TEXTS).sort()).toEqual([...HABITS].sort());
    expect(new Set(Object.values(HABIT_TEXTS).map(({ name }) => name)).size).toBe(HABITS.length);
  });
});
