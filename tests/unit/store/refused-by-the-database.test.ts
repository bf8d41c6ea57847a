import { beforeEach, describe, expect, it } from 'vitest';
import { saveReadings } from '@/lib/store';
import { freshStore, onPostgresql, statement } from './fresh-store';
import { BY_COMMAND, fileNamed, reading } from './invented-readings';

const store = freshStore({ shared: true });

/** In the words of either database. */
const UNIQUE = /unique constraint/i;
const REFERENCE = /foreign key constraint/i;
const CHECK = /check constraint/i;

beforeEach(async () => {
  // There already after the first test: what is refused changes nothing.
  await saveReadings(store.shop, [reading()], fileNamed('one.csv'), BY_COMMAND);
});

/** A second revision of the one reading, all in order but for what is told. */
function anotherReading(change: Record<string, string>): string {
  const cells = {
    ...{
      setupId: '"setupId"',
      dimensionId: '"dimensionId"',
      repeat: '"repeat"',
      revision: '2',
      value: '352',
    },
    ...{
      takenAt: '"takenAt"',
      reason: `'misread'`,
      shopId: '1',
      personId: '1',
      fileId: '"fileId"',
      line: '2',
    },
    ...change,
  };
  const columns = Object.keys(cells).map((name) => `"${name}"`);
  return `INSERT INTO "Reading" (${columns.join(', ')}) SELECT ${Object.values(cells).join(', ')} FROM "Reading"`;
}

/** Statements that no code of ours sends: the database alone has to refuse them. */
describe('the database refuses', () => {
  const NOT_UNIQUE: [string, string][] = [
    [
      'a second person with the same code',
      `INSERT INTO "Person" ("shopId", "code", "name", "role") SELECT "shopId", "code", 'x', 'technician' FROM "Person"`,
    ],
    [
      'a second gauge with the same tag',
      `INSERT INTO "Gauge" ("shopId", "tag") SELECT "shopId", "tag" FROM "Gauge"`,
    ],
    [
      'a second sheet with the same name',
      `INSERT INTO "Sheet" ("shopId", "name") SELECT "shopId", "name" FROM "Sheet"`,
    ],
    [
      'a second job with the same number',
      `INSERT INTO "Job" SELECT "id" + 1, "shopId", "number", "sheetId", "searchText", "openedAt", "lastReadAt", "lastStage", "lastAttempt", "technicianId", "roundCount", "setupCount", "readingCount", "version" FROM "Job"`,
    ],
    [
      'a second round of the same stage and attempt',
      `INSERT INTO "Round" SELECT "id" + 1, "shopId", "jobId", "stage", "attempt", "clearance", "technicianId", "startedAt", "version" FROM "Round"`,
    ],
    [
      'a second setup of the same label in a job',
      `INSERT INTO "Setup" SELECT "id" + 1, "shopId", "jobId", "roundId", "label", "technicianId", "gaugeId", "hungAt" FROM "Setup"`,
    ],
    [
      'a second dimension of the same quantity, point and side',
      `INSERT INTO "Dimension" SELECT "id" + 1, "sheetId", "quantity", "point", "side", "section", "station", "zero", "nominal" + 1, "tolerance", "named" FROM "Dimension"`,
    ],
    ['a second reading of the same repeat', `INSERT INTO "Reading" SELECT * FROM "Reading"`],
    [
      'a second file of the same content',
      `INSERT INTO "LoadedFile" SELECT "id" + 1, "shopId", "sha256", "name", "lines", "added", "alreadyThere", "loadedAt" FROM "LoadedFile"`,
    ],
  ];
  it.each(NOT_UNIQUE)('%s', async (_, sql) => {
    await expect(statement(sql)).rejects.toThrow(UNIQUE);
  });

  const REFERS_TO_NOTHING: [string, string][] = [
    ['a job of no sheet', `UPDATE "Job" SET "sheetId" = 99`],
    ['a setup by nobody', `UPDATE "Setup" SET "technicianId" = 99`],
    ['a setup of no gauge', `UPDATE "Setup" SET "gaugeId" = 99`],
    ['a setup of no round', `UPDATE "Setup" SET "roundId" = 99`],
    ['a reading of no observation', anotherReading({ setupId: '99' })],
    ['a reading of no file', anotherReading({ fileId: '99' })],
    ['a reading by nobody', anotherReading({ personId: '99' })],
    ['the loss of a technician with setups', `DELETE FROM "Person"`],
    ['the loss of an observation with readings', `DELETE FROM "Observation"`],
    ['the loss of a job with rounds', `DELETE FROM "Job"`],
  ];
  it.each(REFERS_TO_NOTHING)('%s', async (_, sql) => {
    await expect(statement(sql)).rejects.toThrow(REFERENCE);
  });

  it('a setup by a technician of another shop', async () => {
    await statement(`INSERT INTO "Shop" ("id", "name", "timeZone") VALUES (7, 'Other', 'UTC')`);
    await statement(
      `INSERT INTO "Person" ("id", "shopId", "code", "name", "role") VALUES (70, 7, 'X', 'X', 'technician')`,
    );
    await expect(statement(`UPDATE "Setup" SET "technicianId" = 70`)).rejects.toThrow(REFERENCE);
  });

  const OUT_OF_RANGE: [string, string][] = [
    ['an unknown role', `UPDATE "Person" SET "role" = 'owner'`],
    ['an unknown gauge kind', `UPDATE "Gauge" SET "kind" = 'laser'`],
    ['an unknown stage', `UPDATE "Round" SET "stage" = 'during'`],
    ['attempt 0', `UPDATE "Round" SET "attempt" = 0`],
    ['a height without a side', `UPDATE "Dimension" SET "side" = ''`],
    ['a height without a station', `UPDATE "Dimension" SET "station" = NULL`],
    ['a height that its sheet value tells apart', `UPDATE "Dimension" SET "named" = "nominal"`],
    ['a tolerance below nought', `UPDATE "Dimension" SET "tolerance" = -1`],
    ['an observation of fewer readings than none', `UPDATE "Observation" SET "n" = -1`],
    ['scatter of a single reading', `UPDATE "Observation" SET "ss" = 1`],
    ['an endless value', anotherReading({ value: onPostgresql ? `'Infinity'` : '9e999' })],
    ['a corrected reading without a reason', anotherReading({ reason: 'NULL' })],
    ['a corrected reading with an empty reason', anotherReading({ reason: `''` })],
    ['a corrected reading by nobody', anotherReading({ personId: 'NULL', shopId: 'NULL' })],
    [
      'a reading from nowhere',
      anotherReading({ fileId: 'NULL', line: 'NULL', personId: 'NULL', shopId: 'NULL' }),
    ],
    ['an unknown cause', `UPDATE "Observation" SET "cause" = 'wind'`],
    ['more dimensions out than there are', `UPDATE "JobOutcome" SET "out" = 1`],
  ];
  it.each(OUT_OF_RANGE)('%s', async (_, sql) => {
    await expect(statement(sql)).rejects.toThrow(CHECK);
  });

  it('any other change of a reading or of the trace than one row more', async () => {
    await expect(statement(anotherReading({}))).resolves.toBe(1);
    await statement(
      `INSERT INTO "Trace" ("shopId", "at", "via", "action", "kind", "subject") SELECT "id", "createdAt", 'program', 'x', 'shop', '' FROM "Shop"`,
    );
    for (const table of ['Reading', 'Trace']) {
      const refusal = `rows of ${table} are only ever added`;
      await expect(statement(`UPDATE "${table}" SET "reason" = 'another'`)).rejects.toThrow(refusal);
      await expect(statement(`DELETE FROM "${table}"`)).rejects.toThrow(refusal);
    }
  });
});
