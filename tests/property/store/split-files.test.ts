import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { collapse, type Reading } from '@/lib/measure';
import { loadJobs, readingsFor, saveReadings } from '@/lib/store';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, reading } from '@/tests/unit/store/invented-readings';

const store = freshStore();

/** Readings of a few jobs, no two of the same place, with values as they are read. */
const readings = fc
  .uniqueArray(
    fc.record({
      job: fc.integer({ min: 0, max: 2 }),
      after: fc.boolean(),
      setup: fc.integer({ min: 0, max: 2 }),
      side: fc.constantFrom('L' as const, 'R' as const),
      repeat: fc.integer({ min: 1, max: 3 }),
      tenths: fc.integer({ min: 3000, max: 4000 }),
      minute: fc.integer({ min: 0, max: 500 }),
    }),
    { selector: (r) => `${r.job} ${r.after} ${r.setup} ${r.side} ${r.repeat}`, minLength: 1, maxLength: 40 },
  )
  .map((drawn) =>
    drawn.map(({ job, after, setup, side, repeat, tenths, minute }, index): Reading =>
      reading({
        line: index + 2,
        job: `J${job}`,
        stage: after ? 'after' : 'before',
        setup: `${after ? 'A' : 'B'}${setup}`,
        technician: `T${setup}`,
        side,
        repeat,
        value: tenths / 10,
        takenAt: Date.UTC(2026, 3, 1) + minute * 60_000,
      }),
    ),
  );

describe('saveReadings', () => {
  it('comes to the same, to the last bit, however the readings are split into files and ordered', async () => {
    let run = 0;
    await fc.assert(
      fc.asyncProperty(
        readings,
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 40, maxLength: 40 }),
        async (drawn, parts) => {
          // A shop of its own for every run, in the same database.
          const job = (one: Reading) => ({ ...one, job: `${run} ${one.job}`, sheet: `sheet ${run}` });
          const own = drawn.map(job);
          run += 1;
          for (const which of [2, 0, 1]) {
            const file = own.filter((_, index) => parts[index] === which);
            await saveReadings(store.shop, file, fileNamed(`${run} ${which}`), BY_COMMAND);
          }
          const numbers = [...new Set(own.map((one) => one.job))];
          expect(await loadJobs(store.shop, { jobs: numbers })).toEqual(collapse(own));
          const back: Reading[] = [];
          for await (const one of readingsFor(store.shop, { jobs: numbers })) back.push(one);
          expect(collapse(back)).toEqual(collapse(own));
          expect(back).toHaveLength(own.length);
        },
      ),
      { numRuns: 25, seed: 20260302 },
    );
  });
});
