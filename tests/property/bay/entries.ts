import fc from 'fast-check';
import { newEntry, STEPS, type Entry, type EntryBody, type KeptEntry } from '@/lib/bay';
import { SMALL_SHEET } from '@/tests/unit/bay/small-round';

const pick = <T>(all: readonly T[]) => fc.constantFrom(...all);
const refs = SMALL_SHEET.dimensions.map(({ quantity, point, side, nominal }) => ({
  ...{ quantity, point, side, nominal },
}));
const value = fc.integer({ min: 3000, max: 3100 }).map((tenths) => tenths / 10);
/** Few places and values, so that entries meet. */
const place = fc.record({
  setup: fc.constantFrom('b1-1aaa', 'b1-1bbb', 'b1-2bbb'),
  dimension: pick(refs.slice(0, 4)),
  repeat: fc.constantFrom(1, 2),
});
const step = pick(STEPS);

const body: fc.Arbitrary<EntryBody> = fc.oneof(
  fc.record({
    kind: fc.constant('equipment' as const),
    check: fc.constantFrom('same-tips' as const, 'fixed-mark' as const),
    ok: fc.boolean(),
    note: fc.constant(null),
  }),
  fc.constantFrom('b1-1aaa', 'b1-1bbb', 'b1-2bbb').map((setup): EntryBody => ({
    ...{ kind: 'hang', setup, place: `at ${setup}`, gauge: 'C1', gaugeKind: 'centering', hand: null },
  })),
  {
    arbitrary: place.chain((at) => value.map((v): EntryBody => ({ kind: 'read', ...at, value: v }))),
    weight: 4,
  },
  place.chain((at) =>
    fc.tuple(value, value).map(([from, to]): EntryBody => ({
      ...{ kind: 'correct', ...at, from, value: to, reason: 'misread' },
    })),
  ),
  step.map((one): EntryBody => ({ kind: 'skip', step: one, place: null, reason: 'no time' })),
  step.map((one): EntryBody => ({ kind: 'resume', step: one, place: null })),
);

/** Whole numbers as UUIDs, so that a draw is told apart by its place. */
export const keyOf = (device: string, sequence: number): string =>
  `00000000-0000-4000-8000-${device === 'aaa' ? '1' : '2'}${String(sequence).padStart(11, '0')}`;

/** What one device enters, by a clock that may be put back. */
export const entriesOf = (device: string, most = 20): fc.Arbitrary<Entry[]> =>
  fc
    .array(fc.tuple(body, fc.integer({ min: 0, max: 40 })), { maxLength: most })
    .map((drawn) =>
      drawn.map(([one, minute], index) =>
        newEntry(device, index + 1, minute * 60_000, keyOf(device, index + 1), one),
      ),
    );

/** As the shop keeps them, in this order of arrival. */
export const asKept = (entries: readonly Entry[], first = 1): KeptEntry[] =>
  entries.map((entry, index) => ({
    ...entry,
    id: first + index,
    by: entry.device === 'aaa' ? 'ONE' : 'TWO',
    conflict: null,
  }));

/** Both lists in one, each in its own order: `true` takes the next of the first. */
export function interleaved<T>(a: readonly T[], b: readonly T[], turns: readonly boolean[]): T[] {
  const [first, second] = [[...a], [...b]];
  const merged: T[] = [];
  for (const turn of turns) {
    const next = turn ? first.shift() : second.shift();
    if (next !== undefined) merged.push(next);
  }
  return [...merged, ...first, ...second];
}
