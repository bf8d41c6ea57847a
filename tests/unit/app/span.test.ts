import { describe, expect, it } from 'vitest';
import { askedMonths, heldMonths } from '@/app/_figures/stretch/asked-months';
import { handQuestion, isAsked, timesOf } from '@/app/technicians/_parts/hand-question';

const MONTHS = ['2025-11', '2025-12', '2026-01', '2026-02'];
const NOTHING = { last: undefined, from: undefined, to: undefined };

describe('the months that figures are held to', () => {
  it('leave out what cannot be understood and say so', () => {
    const { asked, notes } = askedMonths({ from: '2026-13', to: '2026-03', last: '5' });
    expect(asked).toEqual({ last: undefined, from: undefined, to: '2026-03' });
    expect(notes).toEqual([
      '“5” is not understood as last (wanted: 3, 6, 12), so it was left out.',
      '“2026-13” is not understood as from (wanted: a month such as 2025-03), so it was left out.',
    ]);
  });

  it('are the newest ones on record where so many are asked for, over the turn of a year', () => {
    expect(heldMonths({ ...NOTHING, last: '3', from: '2025-01' }, MONTHS)).toEqual({
      from: '2025-12',
      to: '2026-02',
    });
    expect(heldMonths({ ...NOTHING, last: '12' }, MONTHS)).toEqual({ from: '2025-03', to: '2026-02' });
  });

  it('are those asked for otherwise, open where no end is', () => {
    expect(heldMonths({ ...NOTHING, to: '2026-01' }, MONTHS)).toEqual({ from: undefined, to: '2026-01' });
    expect(heldMonths({ ...NOTHING, last: '3' }, [])).toEqual({ from: undefined, to: undefined });
  });

  it('take in their last day, in the shop’s zone', () => {
    const { from, to } = timesOf({ from: '2026-03', to: '2026-03' }, 'Europe/Berlin');
    // In that month the clocks go forward: it lacks an hour.
    expect((to ?? 0) - (from ?? 0)).toBe((31 * 24 - 1) * 3600 * 1000);
  });
});

describe('the part of a hand’s work that is asked for', () => {
  it('may be a gauge, a sheet or a section, each by itself', () => {
    expect(isAsked(handQuestion({}).question)).toBe(false);
    for (const part of [{ gauge: 'CG1' }, { sheet: 'Coupe' }, { section: 'rear' }, { last: '6' }])
      expect(isAsked(handQuestion(part).question), JSON.stringify(part)).toBe(true);
  });

  it('leaves out a section that is none, and says so', () => {
    const { question, notes } = handQuestion({ section: 'roof', gauge: 'CG1' });
    expect(question).toEqual({ ...NOTHING, gauge: 'CG1', sheet: undefined, section: undefined });
    expect(notes).toEqual(['“roof” is not understood as section, so it was left out.']);
  });
});
