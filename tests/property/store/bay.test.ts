import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingKey, recordOf, readingsOf, type Entry } from '@/lib/bay';
import { collapse, type Job } from '@/lib/measure';
import { bayEntries, beginBayRound, loadJobs } from '@/lib/store';
import { interleaved } from '@/tests/property/bay/entries';
import { by, Device, dimension, headOf, openRound, ROUND, send } from '@/tests/unit/store/bay-device';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();

const PLACES = (['L', 'R'] as const).flatMap((side) =>
  [1, 2].map((repeat) => ({ of: dimension('A', side), repeat })),
);
/** What a device does: reads in the setup that both read, or hangs one of its own and reads and corrects in that. */
const deeds = fc.array(
  fc.record({
    what: fc.constantFrom('read shared', 'hang', 'read', 'read', 'correct'),
    at: fc.nat(PLACES.length - 1),
    tenths: fc.integer({ min: 3000, max: 3002 }),
  }),
  { minLength: 3, maxLength: 7 },
);
type Deeds = typeof deeds extends fc.Arbitrary<infer T> ? T : never;

const SHARED = 'b1-1aaa';

/** The deeds as entries: no device reads a place twice, and it corrects what it read itself. */
function entered(device: Device, done: Deeds): Entry[] {
  const before = device.made.length;
  const read = new Map<string, number>();
  let hung = device.made.length;
  let own: string | null = null;
  for (const { what, at, tenths } of done) {
    const place = PLACES[at];
    if (place === undefined) continue;
    const [{ of, repeat }, value] = [place, tenths / 10];
    const setup = what === 'read shared' ? SHARED : own;
    const key = `${setup ?? ''} ${readingKey(of, repeat)}`;
    const there = read.get(key);
    if (what === 'hang') device.hang((own = `b1-${(hung += 1)}${device.name}`));
    else if (setup === null) continue;
    else if (what === 'correct' && there !== undefined) device.correct(setup, of, there, value, repeat);
    else if (what !== 'correct' && there === undefined) device.read(setup, of, value, repeat);
    else continue;
    if (what !== 'hang') read.set(key, value);
  }
  return device.made.slice(before);
}

/** Sends everything in the order given, device by device where one follows itself; another round, the same entries. */
async function kept(job: string, order: readonly Entry[]) {
  const round = await beginBayRound(store.shop, { ...ROUND, job }, 'ONE', by('ONE'));
  for (const entry of order)
    await send(store.shop, round, [{ ...entry, key: randomUUID() }], entry.device === 'aaa' ? 'ONE' : 'TWO');
  const entries = await bayEntries(store.shop, round, 0);
  const record = recordOf(entries, [], 'ONE');
  const head = await headOf(store.shop, round);
  const [stored] = await loadJobs(store.shop, { jobs: [job] });
  return { record, stored, asEntered: collapse(readingsOf(head, record))[0] };
}

describe('two devices on one round', () => {
  it('come to the same, whosever entries arrive first: record and measurements agree, but where the two contradict', async () => {
    await openRound(store.shop, { job: 'J0' });
    let run = 0;
    await fc.assert(
      fc.asyncProperty(
        deeds,
        deeds,
        fc.array(fc.boolean(), { minLength: 14, maxLength: 14 }),
        async (one, other, turns) => {
          run += 1;
          const [a, b] = [new Device('aaa'), new Device('bbb', Date.UTC(2026, 4, 4, 8, 0, 7))];
          const first = [a.hang(SHARED)];
          const [own, others] = [entered(a, one), entered(b, other)];
          const plain = await kept(`${run} plain`, [...first, ...own, ...others]);
          const mixed = await kept(`${run} mixed`, [...first, ...interleaved(own, others, turns)]);
          for (const { stored, asEntered } of [plain, mixed]) expect(stored).toEqual(asEntered);

          const contradicted = (of: typeof plain) =>
            new Map(
              of.record.contradictions.map(({ setup, dimension: ref, repeat, first: x, second: y }) => [
                `${setup} ${readingKey(ref, repeat)}`,
                new Set([x, y]),
              ]),
            );
          expect(contradicted(mixed)).toEqual(contradicted(plain));
          const touched = new Set(contradicted(plain).keys());
          expect(told(mixed, touched)).toEqual(told(plain, touched));
        },
      ),
      { numRuns: 4, seed: 20261125 },
    );
  });
});

/** Record and measurements, without what both devices read: there the first value and its time stay. */
function told({ record, stored }: Awaited<ReturnType<typeof kept>>, touched: ReadonlySet<string>) {
  const values = record.setups.flatMap(({ label, place, gauge, hand, readings }) =>
    [...readings]
      .map(([at, reading]) => ({ at: `${label} ${at}`, place, gauge, hand, value: reading.value }))
      .filter(({ at }) => !touched.has(at)),
  );
  return { values: new Set(values), stored: ownSetups(stored) };
}

const ownSetups = (job: Job | undefined) =>
  (job?.rounds ?? []).map((round) => ({
    ...round,
    job: '',
    setups: round.setups.filter(({ label }) => label !== SHARED),
  }));
