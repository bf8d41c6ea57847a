import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { CHECKS } from '@/prisma/checks.mjs';
import { saveReadings } from '@/lib/store';
import { transaction } from '@/lib/store/connection/database';
import { brokenCheck } from '@/lib/store/save/broken-check';
import { CAUSES, type NewRows } from '@/lib/store/save/new-rows';
import { ask } from '@/lib/store/sql/ask';
import type { RowCell } from '@/lib/store/sql/rows';
import { freshStore, onPostgresql } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, reading } from '@/tests/unit/store/invented-readings';

const store = freshStore({ shared: true });

/** Rows that break nothing, but for what is told of them. */
function rowsWith(label: string, seen: Partial<Seen>, read: Partial<Read>): NewRows {
  const { n, mean, deviation, ss } = { n: 1, mean: 0, deviation: 0, ss: 0, ...seen };
  const { repeat, value, line } = { repeat: 1, value: 0, line: 1, ...read };
  const ints = (...all: number[]) => Int32Array.from(all);
  const doubles = (...all: number[]) => Float64Array.from(all);
  return {
    ...{ jobs: [], rounds: [], own: [], proved: [] },
    named: { technicians: [], gauges: [], labels: [label], dimensions: [] },
    setups: {
      ...{ count: 1, job: ints(0), round: ints(0), label: ints(0), technician: ints(0), gauge: ints(0) },
      hungAt: doubles(0),
    },
    observations: {
      ...{ count: 1, setup: ints(0), dimension: ints(0), n: ints(n), mean: doubles(mean) },
      ...{ deviation: doubles(deviation), ss: doubles(ss), takenAt: doubles(0), cause: Int8Array.of(-1) },
    },
    readings: {
      ...{ count: 1, observation: ints(0), repeat: ints(repeat), value: doubles(value) },
      ...{ takenAt: doubles(0), line: ints(line) },
    },
  };
}

interface Seen {
  n: number;
  mean: number;
  deviation: number;
  ss: number;
}

interface Read {
  repeat: number;
  value: number;
  line: number;
}

const lengths = fc.oneof(
  fc.double(),
  fc.double({ min: -100_001, max: 100_001 }),
  fc.constantFrom(0, -0, 100_000, -100_000, 100_000.000_000_1, -100_000.000_000_1, Infinity, -Infinity, NaN),
);
const counts = fc.integer({ min: -2, max: 4 });
const squares = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, -1, 5e-324, Infinity, NaN));

class Undone extends Error {}

/** Whether SQLite takes a row, which is taken back at once; refused for anything but a rule of the row, it is thrown on. */
async function takes(table: string, cells: Record<string, RowCell>): Promise<boolean> {
  try {
    return await transaction(store.shop, async (_, rows) => {
      const into = rows.into(table, Object.keys(cells));
      into.add(...Object.values(cells));
      await into.flush();
      throw new Undone();
    });
  } catch (error) {
    if (error instanceof Undone) return true;
    expect(String(error)).toMatch(/CHECK constraint failed|NOT NULL constraint failed/);
    return false;
  }
}

describe.skipIf(onPostgresql)('what is asked of rows before they are written is what SQLite asks', () => {
  beforeEach(async () => {
    const both = [reading(), reading({ line: 3, setup: 'H2', point: 'L', station: 900 })];
    await saveReadings(store.shop, both, fileNamed('two.csv'), BY_COMMAND);
  });

  it('of setups', async () => {
    const [stored] = await ask<Record<string, RowCell>>`
      SELECT "shopId", "jobId", "roundId", "technicianId", "gaugeId" FROM "Setup"`;
    for (const label of ['', 'H9', ' ', '\0', '\0H9', 'H9\0'])
      expect([label, await takes('Setup', { ...stored, label, hungAt: 0 })]).toEqual([
        label,
        brokenCheck(rowsWith(label, {}, {})) === null,
      ]);
  });

  it('of observations', async () => {
    const [place] = await ask<Record<string, RowCell>>`
      SELECT a."setupId", b."dimensionId" FROM "Observation" a, "Observation" b WHERE a."setupId" <> b."setupId"`;
    await fc.assert(
      fc.asyncProperty(
        fc.record({ n: counts, mean: lengths, deviation: lengths, ss: squares }),
        fc.constantFrom('mean', 'deviation', 'ss', 'n', 'all'),
        fc.constantFrom(null, ...CAUSES),
        async (drawn, changed, cause) => {
          const sound: Seen = { n: 2, mean: 350, deviation: 0.5, ss: 0.25 };
          const seen = changed === 'all' ? drawn : { ...sound, [changed]: drawn[changed] };
          const taken = await takes('Observation', { ...place, ...seen, takenAt: 0, cause });
          expect(taken).toBe(brokenCheck(rowsWith('H1', seen, {})) === null);
        },
      ),
      { numRuns: 400, seed: 2026 },
    );
  });

  it('of readings', async () => {
    const [place] = await ask<
      Record<string, RowCell>
    >`SELECT "setupId", "dimensionId", "fileId" FROM "Reading"`;
    await fc.assert(
      fc.asyncProperty(
        fc.record({ repeat: counts.filter((repeat) => repeat !== 1), value: lengths, line: counts }),
        fc.constantFrom('repeat', 'value', 'line', 'all'),
        async (drawn, changed) => {
          const sound: Read = { repeat: 2, value: 350, line: 2 };
          const read = changed === 'all' ? drawn : { ...sound, [changed]: drawn[changed] };
          const taken = await takes('Reading', { ...place, ...read, takenAt: 0 });
          expect(taken).toBe(brokenCheck(rowsWith('H1', {}, read)) === null);
        },
      ),
      { numRuns: 400, seed: 2026 },
    );
  });
});

it('no CHECK of these tables asks anything else', () => {
  const { Setup, Observation, Reading } = CHECKS;
  expect({ Setup, Observation, Reading }).toEqual({
    Setup: ['length("label") > 0'],
    Observation: [
      '"n" >= 0',
      '"excluded" >= 0',
      '"mean" BETWEEN -100000 AND 100000',
      '"deviation" BETWEEN -100000 AND 100000',
      '"ss" >= 0',
      '"n" > 1 OR "ss" = 0',
      `"cause" IN ('neither', 'gauge', 'body', 'both')`,
    ],
    Reading: [
      '"repeat" >= 1',
      '"revision" >= 1',
      '"value" BETWEEN -100000 AND 100000',
      '"line" >= 1',
      '"fileId" IS NOT NULL OR "personId" IS NOT NULL',
      '("fileId" IS NULL) = ("line" IS NULL)',
      '("personId" IS NULL) = ("shopId" IS NULL)',
      '"revision" = 1 OR ("reason" IS NOT NULL AND length("reason") > 0 AND "personId" IS NOT NULL)',
    ],
  });
});
