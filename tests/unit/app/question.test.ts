import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobQuery, questionFrom } from '@/app/jobs/_list/question';

describe('what the address asks of the list of jobs', () => {
  test('every part that is understood is taken', () => {
    const { question, notes } = questionFrom({
      search: ' J01 ',
      outcome: 'wrong',
      stage: 'after',
      section: 'front',
      from: '2025-01-01',
      sort: 'sheet',
      direction: 'desc',
      page: '3',
    });
    expect(notes).toEqual([]);
    expect(question).toMatchObject({
      search: 'J01',
      outcome: 'wrong',
      page: 3,
      sort: 'sheet',
      direction: 'desc',
    });
  });

  test('a part that is not understood is left out and named', () => {
    const { question, notes } = questionFrom({ page: '-2', sort: 'colour', from: '2025-02-30', search: 'J' });
    expect(question).toMatchObject({ page: undefined, sort: undefined, from: undefined, search: 'J' });
    expect(notes).toHaveLength(3);
    expect(notes.join(' ')).toContain('“colour” is not understood as sort');
  });

  test('blank parts, as a form sends them, ask for nothing', () => {
    expect(questionFrom({ search: '', outcome: '', page: '' })).toMatchObject({ notes: [] });
  });

  test('no address makes it throw', () => {
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.constantFrom(
            'search',
            'page',
            'sort',
            'direction',
            'from',
            'to',
            'stage',
            'outcome',
            '__proto__',
          ),
          fc.oneof(fc.string(), fc.array(fc.string()), fc.constant(undefined)),
        ),
        (query) => {
          const { question } = questionFrom(query);
          const asked = jobQuery(question, 'Europe/London');
          expect(asked.page).toBeGreaterThanOrEqual(1);
        },
      ),
    );
  });

  test('days are those of the shop, the last one included', () => {
    const asked = jobQuery({ from: '2025-06-01', to: '2025-06-01' }, 'Europe/London');
    expect(asked.from).toBe(Date.UTC(2025, 4, 31, 23));
    expect(asked.to).toBe(Date.UTC(2025, 5, 1, 23));
  });

  test('without a wish the newest job comes first; a chosen column starts upwards', () => {
    expect(jobQuery({}, 'UTC')).toMatchObject({ sort: 'opened', direction: 'desc', page: 1 });
    expect(jobQuery({ sort: 'job' }, 'UTC')).toMatchObject({ sort: 'job', direction: 'asc' });
  });
});
