import { describe, expect, it } from 'vitest';
import { ownHabits } from '@/lib/access/own-habits';
import type { HabitCell } from '@/lib/assess/habits';

const cell = (technician: string): HabitCell => ({
  ...{ technician, habit: 'low-hanger', state: 'not found', p: 0.6, adjustedP: 1, strength: 0, setups: 40 },
  effect: { value: -0.1, low: -0.4, high: 0.2, unit: 'mm', reference: 0.31 },
  evidence: 'In other hands the difference is 0.31 mm.',
  shownBy: [],
});

describe('a technician’s own habits', () => {
  it('are no colleague’s, and stand beside the other hands where there are several', () => {
    const own = ownHabits([cell('A'), cell('B'), cell('C')], 'B');
    expect(own).toEqual([cell('B')]);
  });

  it('keep the one colleague’s figure out where two technicians measure', () => {
    const own = ownHabits([cell('A'), cell('B')], 'B');
    expect(own.map(({ technician }) => technician)).toEqual(['B']);
    expect(own[0]?.effect).toEqual({ value: -0.1, low: -0.4, high: 0.2, unit: 'mm', reference: null });
    expect(JSON.stringify(own)).not.toContain('0.31');
  });
});
