import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { readMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { addShop, listPeople, loadJobs, saveReadings, sheetBook } from '@/lib/store';
import { loadFile } from '@/lib/store/reader';
import { shops } from '@/tests/property/measure/shops';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { heldBy } from '@/tests/unit/store/held-by';
import { BY_COMMAND, fileNamed } from '@/tests/unit/store/invented-readings';

freshStore();
const folder = mkdtempSync(join(tmpdir(), 'rehang-ahead-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Fewer than any of the jobs has. */
const LINES_OF_A_PIECE = 3;

/** What may stand in the way of writing a file before all of it is read, in its lines below the header. */
const TURNS: Readonly<Record<string, (lines: string[], header: string[]) => string[]>> = {
  none: (lines) => lines,
  'without an end of its last line': (lines) => lines,
  'comes back to its jobs': (lines) => [
    ...lines.filter((_, at) => at % 2 === 0),
    ...lines.filter((_, at) => at % 2 === 1),
  ],
  'says a tolerance late': (lines, header) => {
    const at = header.indexOf('tolerance_mm');
    const without = (line: string) => line.split(',').with(at, '').join(',');
    return [...lines.slice(0, -1).map(without), ...lines.slice(-1)];
  },
  'has a fault in its last line': (lines) => [...lines.slice(0, -1), `${lines.at(-1) ?? ''}x`],
};

it('a file that is written while it is read is stored as when it was read first, or not at all', async () => {
  let run = 0;
  await fc.assert(
    fc.asyncProperty(shops, async (drawn) => {
      const [header = '', ...lines] = writeMeasurementFile(drawn).trimEnd().split('\r\n');
      for (const [turn, turned] of Object.entries(TURNS)) {
        run += 1;
        const text =
          [header, ...turned(lines, header.split(','))].join('\n') + (turn.startsWith('without') ? '' : '\n');
        const path = join(folder, `${run}.csv`);
        writeFileSync(path, text);
        const [first, ahead] = [await addShop(`first ${run}`, 'UTC'), await addShop(`ahead ${run}`, 'UTC')];
        const read = await readMeasurementFile(text);
        const of = {
          path,
          name: turn,
          bytes: statSync(path).size,
          timeZone: 'UTC',
          book: await sheetBook(ahead.id),
        };
        const stored: number[] = [];
        const progress = { read: () => undefined, stored: (share: number) => stored.push(share) };
        const loaded = await loadFile(ahead.id, of, BY_COMMAND, progress, LINES_OF_A_PIECE);
        expect(loaded.faults, turn).toEqual(read.faults);
        expect(read.faults.length > 0, turn).toBe(turn.includes('fault'));
        if (read.faults.length > 0) {
          expect(loaded.saved).toBeNull();
          expect(await loadJobs(ahead.id)).toEqual([]);
          expect(await listPeople(ahead.id)).toEqual([]);
          continue;
        }
        const summary = await saveReadings(first.id, read.readings, fileNamed(`first ${run}`), BY_COMMAND);
        expect(loaded.saved, turn).toEqual(summary);
        expect(stored.at(-1), turn).toBe(1);
        // The last job comes once the file has ended; read first, all would have been written at once.
        if (turn === 'none') expect(stored).toHaveLength(Math.min(2, summary.jobs.length));
        expect(await heldBy(ahead.id), turn).toEqual(await heldBy(first.id));
        if (turn !== 'none') continue;
        const again = await loadFile(ahead.id, of, BY_COMMAND, progress, LINES_OF_A_PIECE);
        expect(again.saved, turn).toMatchObject({ added: 0, alreadyThere: read.readings.length, jobs: [] });
      }
    }),
    { numRuns: 2, seed: 2026, endOnFailure: true },
  );
});
