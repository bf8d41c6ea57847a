import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  newDeviceName,
  newEntry,
  nextOf,
  progressOf,
  recordOf,
  setupLabel,
  STEPS,
  type Entry,
  type EntryBody,
  type Prompt,
} from '@/lib/bay';
import { SMALL_HEAD, SMALL_PLAN } from '@/tests/unit/bay/small-round';
import { keyOf } from './entries';

/** More than this many prompts would be a round without an end: 14 readings, 4 of them twice, 10 hangings, 4 checks. */
const MANY = 400;

/** What somebody does at a prompt: as asked, leave the place or the step out, or hang a zero gauge again. */
type Deed = 'as asked' | 'leave the place out' | 'leave the step out' | 'hang a zero gauge again';

/** Mostly as asked, or nothing would ever be left to read. */
const deed = fc.oneof(
  { arbitrary: fc.constant<Deed>('as asked'), weight: 12 },
  { arbitrary: fc.constant<Deed>('leave the place out'), weight: 1 },
  { arbitrary: fc.constant<Deed>('leave the step out'), weight: 1 },
  { arbitrary: fc.constant<Deed>('hang a zero gauge again'), weight: 1 },
);

const zeros = SMALL_PLAN.find(({ step }) => step === 'zero-gauges')?.places ?? [];

function answer(prompt: Exclude<Prompt, { do: 'finish' }>, done: Deed, labels: readonly string[]): EntryBody {
  const { step } = prompt;
  const reason = 'no time';
  if (done === 'leave the step out') return { kind: 'skip', step, place: null, reason };
  if (prompt.do === 'check') return { kind: 'equipment', check: prompt.check, ok: true, note: null };
  const [zero] = zeros;
  const label = setupLabel(SMALL_HEAD, 'aaa', labels);
  const hang = (place: string): EntryBody => ({
    ...{ kind: 'hang', setup: label, place, gauge: 'C1', gaugeKind: 'centering', hand: null },
  });
  if (done === 'hang a zero gauge again' && zero !== undefined) return hang(zero.key);
  if (done === 'leave the place out') return { kind: 'skip', step, place: prompt.place.key, reason };
  if (prompt.do === 'hang') return hang(prompt.place.key);
  const { quantity, point, side, nominal } = prompt.dimension;
  const dimension = { quantity, point, side, nominal };
  return { kind: 'read', setup: prompt.setup.label, dimension, repeat: prompt.repeat, value: nominal + 100 };
}

function measured(deeds: readonly Deed[], from: (typeof STEPS)[number] | null) {
  const entries: Entry[] = [];
  for (let at = 0; at < MANY; at += 1) {
    const record = recordOf([], entries, 'ONE');
    const prompt = nextOf(SMALL_PLAN, record, from);
    if (prompt.do === 'finish') return { record, entries };
    const labels = record.setups.map(({ label }) => label);
    const body = answer(prompt, deeds[at] ?? 'as asked', labels);
    entries.push(newEntry('aaa', at + 1, at * 60_000, keyOf('aaa', at + 1), body));
  }
  return null;
}

describe('what is to be done next', () => {
  it('leads to the end of the round, whatever is left out, hung again or done first', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 60 }), fc.constantFrom(null, ...STEPS), (deeds, from) => {
        const end = measured(deeds, from);
        expect(end).not.toBeNull();
        if (end === null) return;
        expect(
          progressOf(SMALL_PLAN, end.record).every(
            ({ wanted, done, skipped }) => skipped !== null || done === wanted,
          ),
        ).toBe(true);
        expect(end.record.contradictions).toEqual([]);
        const labels = end.entries.flatMap(({ body }) => (body.kind === 'hang' ? [body.setup] : []));
        expect(new Set(labels).size).toBe(labels.length);
      }),
      { numRuns: 40, seed: 20261126 },
    );
  });
});

describe('the label of a setup', () => {
  it('is given by no two devices, and by none twice', () => {
    const name = fc
      .array(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), { minLength: 3, maxLength: 3 })
      .map((drawn) => {
        const left = [...drawn];
        return newDeviceName(() => left.shift() ?? 0);
      });
    fc.assert(
      fc.property(
        fc.uniqueArray(name, { minLength: 2, maxLength: 4 }),
        fc.array(fc.nat(3), { maxLength: 40 }),
        fc.boolean(),
        (names, turns, together) => {
          const given: { device: string; label: string }[] = [];
          for (const turn of turns) {
            const device = names[turn % names.length] ?? '';
            // A device knows its own labels, and those of the others only where it has a connection.
            const known = given.filter((one) => together || one.device === device).map(({ label }) => label);
            given.push({ device, label: setupLabel(SMALL_HEAD, device, known) });
          }
          expect(new Set(given.map(({ label }) => label)).size).toBe(given.length);
        },
      ),
      { numRuns: 200, seed: 20261127 },
    );
  });
});
