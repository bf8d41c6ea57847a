import fc from 'fast-check';
import { expect, it } from 'vitest';
import { collapse, readMeasurementFile, writeMeasurementFile, type Reading } from '@/lib/measure';
import { shops } from './shops';

/** What one line may say otherwise than the lines about it. */
const CHANGES: readonly ((reading: Reading, other: Reading) => Reading)[] = [
  (one, { technician }) => ({ ...one, technician }),
  (one, { gauge }) => ({ ...one, gauge }),
  (one, { setup }) => ({ ...one, setup }),
  (one, { sheet }) => ({ ...one, sheet: sheet === one.sheet ? 'another' : sheet }),
  (one, { stage, attempt }) => ({ ...one, stage, attempt }),
  (one, { repeat }) => ({ ...one, repeat }),
  (one, { point, side }) => (one.quantity === 'height' && side !== null ? { ...one, point, side } : one),
  (one) => ({ ...one, nominal: one.nominal + 1 }),
  (one) => ({ ...one, tolerance: one.tolerance + 1 }),
  (one) => (one.quantity === 'height' ? { ...one, clearance: one.clearance + 1 } : one),
  (one) => (one.quantity === 'height' ? { ...one, zero: !one.zero } : one),
  (one) => (one.station === null ? one : { ...one, station: one.station + 1 }),
  (one) => ({ ...one, cause: one.cause === 'body' ? 'gauge' : 'body' }),
  (one) => ({ ...one, gaugeKind: one.gaugeKind === 'tape' ? 'tram' : 'tape' }),
  (one) => ({ ...one, value: Number.NaN }),
  (one) => one,
];

const change = fc.record({
  which: fc.nat(),
  other: fc.nat(),
  how: fc.constantFrom(...CHANGES),
});

/** A file in which a few lines contradict others. */
const files = fc.tuple(shops, fc.array(change, { maxLength: 2 })).map(([readings, changes]) => {
  const changed = [...readings];
  for (const { which, other, how } of changes) {
    const at = which % changed.length;
    const [one, two] = [changed[at], changed[other % changed.length]];
    if (one !== undefined && two !== undefined) changed[at] = how(one, two);
  }
  return writeMeasurementFile(changed).trimEnd().split(/\r?\n/);
});

const RUNS = { numRuns: 60, seed: 2026 };
const joined = (lines: readonly string[]) => `${lines.join('\n')}\n`;

it('lines that are split here are read as the CSV library reads them, fault for fault', async () => {
  await fc.assert(
    fc.asyncProperty(files, async (lines) => {
      const with_ = (header: string) => joined(lines.map((line, at) => `${line},${at === 0 ? header : ''}`));
      const plain = await readMeasurementFile(with_('note'));
      // A quote within quotes is left to the library, and all that follows it.
      const byLibrary = await readMeasurementFile(with_('"no""te"'));
      expect(plain.readings).toEqual(byLibrary.readings);
      expect(plain.faults).toEqual(byLibrary.faults);
      expect({ ...plain.summary, ignoredColumns: [], notes: [], bytes: 0 }).toEqual({
        ...byLibrary.summary,
        ...{ ignoredColumns: [], notes: [], bytes: 0 },
      });
    }),
    RUNS,
  );
});

it('the rules across lines refuse the same where they are applied at once and where they are asked first', async () => {
  let sound = 0;
  await fc.assert(
    fc.asyncProperty(files, async (lines) => {
      const [, line = ''] = lines;
      // A faulty line of another job has the rules applied to all others, unasked.
      const faulty = line.replace(/^[^,]*/, 'another job').replace(/,(before|after),/, ',never,');
      const asked = await readMeasurementFile(joined(lines));
      const applied = await readMeasurementFile(joined([...lines, faulty]));
      expect(applied.faults.filter((one) => one.line !== lines.length + 1)).toEqual(asked.faults);
      if (asked.faults.length > 0) return;
      sound += 1;
      expect(collapse(asked.readings).length).toBeGreaterThan(0);
    }),
    RUNS,
  );
  // Both kinds of files were drawn.
  expect(sound).toBeGreaterThan(10);
  expect(sound).toBeLessThan(RUNS.numRuns - 10);
});
