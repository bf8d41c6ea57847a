import { describe, expect, it } from 'vitest';
import { collapse } from '@/lib/measure';
import { outcomeOf } from '@/lib/refresh/update-outcomes';
import { lines, reading } from '@/tests/unit/store/invented-readings';

const outcome = (changes: Parameters<typeof lines>[0]) => {
  const [job] = collapse(lines(changes));
  if (job === undefined) throw new Error('No job came of the readings.');
  return outcomeOf(job);
};

describe('outcomeOf', () => {
  it('has no answer before the first measuring after the repair', () => {
    expect(outcome([{ stage: 'before' }])).toMatchObject({
      right: null,
      technician: null,
      at: null,
      controlled: 0,
    });
  });

  it('counts by section what is controlled and what is out, the tolerance’s edge being within', () => {
    const after = { stage: 'after', setup: 'A1' } as const;
    const found = outcome([
      { ...after, value: 353 },
      { ...after, side: 'R', value: 353.1 },
      { ...after, quantity: 'length', point: 'K-N', side: null, section: 'rear', station: null, value: 250 },
      { ...after, quantity: 'length', point: 'K-M', side: null, section: null, station: null, value: 250 },
    ]);
    expect(found).toEqual({
      job: 'J1',
      right: false,
      technician: 'T1',
      at: reading().takenAt,
      controlled: 4,
      out: 1,
      sections: { front: { controlled: 2, out: 1 }, rear: { controlled: 1, out: 0 } },
    });
  });
});
