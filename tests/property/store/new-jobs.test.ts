import fc from 'fast-check';
import { expect, it } from 'vitest';
import { collapse, tabulateMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { addShop, saveReadings, saveTable } from '@/lib/store';
import { engine } from '@/lib/store/connection/database';
import { tableReadings } from '@/lib/store/save/file-readings';
import { saveFileReadings } from '@/lib/store/save/save-table';
import { shops } from '@/tests/property/measure/shops';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { heldBy } from '@/tests/unit/store/held-by';
import { BY_COMMAND, fileNamed } from '@/tests/unit/store/invented-readings';

freshStore();

/** What SQLite finds wrong in its file: keys, checks, indexes and references; a server keeps them itself. */
async function brokenIn(): Promise<unknown[]> {
  const { sqlite } = await engine();
  if (sqlite === null) return [];
  const found = ['PRAGMA foreign_key_check', 'PRAGMA integrity_check'].flatMap((ask) =>
    sqlite.prepared(ask).statement.all(),
  );
  return found.filter((row) => row.integrity_check !== 'ok');
}

it('a table of readings is stored as the same readings are one by one, beside whatever is there already', async () => {
  let run = 0;
  await fc.assert(
    fc.asyncProperty(
      shops,
      fc.array(fc.boolean(), { minLength: 20, maxLength: 20 }),
      fc.boolean(),
      async (drawn, there, named) => {
        run += 1;
        const own = drawn.map((one) => ({ ...one, sheet: named ? one.sheet : null }));
        const { readings: table, faults } = await tabulateMeasurementFile(writeMeasurementFile(own));
        expect(faults).toEqual([]);
        if (table === null) return;
        const earlier = [...table].filter((_, index) => there[index % there.length]);
        const stored = await Promise.all(
          ['one by one', 'as a table', 'as a large table'].map(async (how) => {
            const { id } = await addShop(`${how} ${run}`, 'UTC');
            await saveReadings(id, earlier, fileNamed('earlier'), BY_COMMAND);
            return id;
          }),
        );
        const [plain = 0, fast = 0, large = 0] = stored;
        const summary = await saveReadings(plain, [...table], fileNamed('all'), BY_COMMAND);
        expect(await saveTable(fast, table, fileNamed('all'), BY_COMMAND)).toEqual(summary);
        const held = await heldBy(fast);
        expect(held).toEqual(await heldBy(plain));
        const readings = tableReadings(table);
        const nothing = () => undefined;
        expect(await saveFileReadings(large, readings, fileNamed('all'), BY_COMMAND, nothing, true)).toEqual(
          summary,
        );
        expect(await heldBy(large)).toEqual(held);
        expect(await brokenIn()).toEqual([]);
        expect(held.jobs).toEqual(collapse(table));
        const again = await saveTable(fast, table, fileNamed('again'), BY_COMMAND);
        expect(again).toMatchObject({ added: 0, jobs: [], alreadyThere: table.size });
      },
    ),
    { numRuns: 6, seed: 2026 },
  );
});
