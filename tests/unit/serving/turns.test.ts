import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Turns } from '@/lib/serving/turns';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Asks for a turn, and notes when it has begun. */
function asker(turns: Turns) {
  const begun: string[] = [];
  const ask = async (name: string) => {
    const end = await turns.take();
    begun.push(name);
    return end;
  };
  return { begun, ask };
}
/** All that can go on without a timer has done so. */
const settled = () => vi.advanceTimersByTimeAsync(0);

describe('turns', () => {
  it('begin a few at a time, the others in the order they came as one ends', async () => {
    const { begun, ask } = asker(new Turns(2));
    const [first, , third] = ['a', 'b', 'c', 'd', 'e'].map(ask);
    await settled();
    expect(begun).toEqual(['a', 'b']);
    (await first)?.();
    await settled();
    expect(begun).toEqual(['a', 'b', 'c']);
    (await third)?.();
    await settled();
    expect(begun).toEqual(['a', 'b', 'c', 'd']);
  });

  it('that are ended twice make room for one only', async () => {
    const { begun, ask } = asker(new Turns(1));
    const [first] = ['a', 'b', 'c'].map(ask);
    const end = await first;
    end?.();
    end?.();
    await settled();
    expect(begun).toEqual(['a', 'b']);
  });

  it('end by themselves, so that what waits for something else holds up nobody', async () => {
    const { begun, ask } = asker(new Turns(1, 500));
    void Promise.all(['a', 'b', 'c'].map(ask));
    await vi.advanceTimersByTimeAsync(499);
    expect(begun).toEqual(['a']);
    await vi.advanceTimersByTimeAsync(1);
    expect(begun).toEqual(['a', 'b']);
    await vi.advanceTimersByTimeAsync(500);
    expect(begun).toEqual(['a', 'b', 'c']);
  });

  it('are free again once all have ended', async () => {
    const { begun, ask } = asker(new Turns(1));
    (await ask('a'))();
    (await ask('b'))();
    expect(begun).toEqual(['a', 'b']);
  });
});
