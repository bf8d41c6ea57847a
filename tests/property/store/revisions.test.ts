import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { collapse, type Reading } from '@/lib/measure';
import {
  correctReading,
  countExcluded,
  excludeReading,
  includeReading,
  loadJobs,
  readingsFor,
  saveReadings,
} from '@/lib/store';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, reading } from '@/tests/unit/store/invented-readings';

const store = freshStore();
const ACTOR = { person: 'T1', via: 'page' } as const;
const WHY = { reason: 'drawn' };

const steps = fc.array(
  fc.record({
    which: fc.integer({ min: 0, max: 5 }),
    what: fc.constantFrom('correct', 'exclude', 'include', 'load again'),
    tenths: fc.integer({ min: 3400, max: 3600 }),
  }),
  { minLength: 1, maxLength: 12 },
);

describe('corrections, exclusions and returns in any order', () => {
  it('come to the same, to the last bit, as a file of the readings that count in the end', async () => {
    let run = 0;
    await fc.assert(
      fc.asyncProperty(steps, async (drawn) => {
        run += 1;
        const job = `run ${run}`;
        const entered = [0, 1, 2, 3, 4, 5].map((index): Reading =>
          reading({
            ...{ line: index + 2, job, sheet: job, repeat: 1 + (index % 3), side: index < 3 ? 'L' : 'R' },
            ...{ value: 350.1 + index / 10, takenAt: Date.UTC(2026, 3, 1) + index * 1000 },
          }),
        );
        const file = fileNamed(job);
        await saveReadings(store.shop, entered, file, BY_COMMAND);
        const now = entered.map((one) => ({ one, excluded: false }));
        for (const { which, what, tenths } of drawn) {
          const standing = now[which];
          if (standing === undefined) continue;
          const { one, excluded } = standing;
          if (what === 'load again') await saveReadings(store.shop, entered, file, BY_COMMAND);
          else if (what === 'correct' && one.value !== tenths / 10) {
            standing.one = { ...one, value: tenths / 10 };
            await correctReading(store.shop, { ...one, value: tenths / 10, ...WHY }, ACTOR);
          } else if (what !== 'correct' && excluded === (what === 'include')) {
            standing.excluded = !excluded;
            const change = excluded ? includeReading : excludeReading;
            await change(store.shop, { ...one, ...WHY }, ACTOR);
          }
        }
        const counting = now.filter(({ excluded }) => !excluded).map(({ one }) => one);
        const loaded = await loadJobs(store.shop, { jobs: [job] });
        // The gauge was hung when its first reading was taken, whether that counts or not.
        const hung = entered[0]?.takenAt ?? 0;
        const wanted = collapse(counting);
        for (const setup of wanted.flatMap(({ rounds }) => rounds.flatMap(({ setups }) => setups)))
          setup.takenAt = hung;
        expect(loaded).toEqual(wanted);
        const back: Reading[] = [];
        for await (const one of readingsFor(store.shop, { jobs: [job] })) back.push(one);
        expect(collapse(back)).toEqual(collapse(counting));
        expect(await countExcluded(store.shop, { job })).toBe(entered.length - counting.length);
      }),
      { numRuns: 12, seed: 20260401 },
    );
  });
});
