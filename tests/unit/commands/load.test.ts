import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeMeasurementFile } from '@/lib/measure';
import { regularShop } from '@/tests/unit/store/invented-readings';

const folder = mkdtempSync(join(tmpdir(), 'rehang-load-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string, text: string) => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const text = writeMeasurementFile(regularShop(4));
const good = file('good.csv', text);

/** Runs `npm run -s load` as a person does, on a database of this file's own. */
const load = (...paths: string[]) => loadInto('new/shop.db', ...paths);

function loadInto(database: string, ...paths: string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ['lib/commands/begin.mjs', 'lib/commands/load.ts', ...paths],
      { env: { ...process.env, DATABASE_URL: `file:${join(folder, database)}` } },
      (error, out, err) => resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err }),
    );
  });
}

describe('loading on the command line', () => {
  it('makes the database, says what the file holds and what was stored, and brings the figures up to date', async () => {
    const { code, out, err } = await load(good);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/good\.csv: 128 readings, 32 setups, 8 rounds, 4 jobs/);
    expect(out).toMatch(/128 readings new, 0 there already; 4 jobs changed \(4 new\)/);
    expect(out).toMatch(/8 rounds judged/);
  });

  it('adds nothing the second time', async () => {
    const { code, out } = await load(good);
    expect(code).toBe(0);
    expect(out).toMatch(/0 readings new, 128 there already; 0 jobs changed/);
    expect(out).not.toMatch(/Learning/);
  });

  describe('of several files, each by itself,', () => {
    const rows = text.split('\r\n').map((row) => row.split(','));
    const left = ['nominal_mm', 'tolerance_mm', 'section', 'zero'].map((name) => rows[0]?.indexOf(name));
    const short = rows.map((row) => row.filter((_, index) => !left.includes(index)).join(','));
    const contradicting = text
      .split('\r\n')
      .map((row, index) => (index === 3 ? row.replace(/,[\d.]+,$/, ',311,') : row));
    const files = {
      short: short.join('\n').replaceAll('J00000', 'K00000'),
      faulty: text.replaceAll('J00000', 'F').replace(',before,', ',during,'),
      'after faulty': text.replaceAll('J00000', 'N'),
      contradicting: contradicting.join('\r\n'),
      refused: text.replaceAll('J00000', 'X'),
      'after refused': text.replaceAll('J00000', 'Y'),
    };
    const ran = { code: 0, out: '', err: '' };
    beforeAll(async () => {
      const database = new Database(join(folder, 'new/shop.db'));
      const refuse = `BEFORE INSERT ON "Job" WHEN NEW."number" = 'X0' BEGIN SELECT RAISE(ABORT, 'not this one'); END`;
      database.exec(`CREATE TRIGGER "refuse" ${refuse}`);
      database.close();
      // One run for all: starting the program takes longer than what it does here.
      const paths = Object.entries(files).map(([name, content]) => file(`${name}.csv`, content));
      Object.assign(ran, await load(...paths));
    });
    /** What is said of one file on standard output, up to the next. */
    const said = (name: string) =>
      ran.out.slice(ran.out.indexOf(`${name}.csv: `)).split(/\n(?=\S*\.csv: |.*\/.*\.csv: )/)[0];

    it('takes from the stored sheet what a later file leaves out', () => {
      expect(said('short')).toMatch(/128 readings new/);
    });

    it('refuses a faulty file with every fault, stores nothing of it, and goes on with the next', () => {
      expect(ran.code).toBe(1);
      expect(ran.err).toMatch(/faulty\.csv is refused; nothing of it was stored\.\nLine 2, column stage/);
      expect(said('after faulty')).toMatch(/128 readings new/);
    });

    it('refuses what contradicts the stored readings, by line', () => {
      expect(ran.err).toMatch(/Line 4, column value_mm: .*is stored as [\d.]+ mm, this line says 311/);
    });

    it('says in a sentence what the database refuses, and still stores the files named after it', () => {
      const [, ...told] = ran.err.split('refused.csv is refused; nothing of it was stored.\n');
      expect(told.join('').trim().split('\n')).toEqual([
        expect.stringMatching(/^The database refused it: not this one/),
      ]);
      expect(said('after refused')).toMatch(/128 readings new/);
    });
  });

  it('stores straight lengths and diagonals of one name', async () => {
    const { code, out, err } = await loadInto('letters.db', 'tests/reference/samples/messy-semicolon.csv');
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/400 readings new/);
  });

  it('says in a sentence what it cannot read', async () => {
    const [{ code, err }, nothing] = await Promise.all([load(join(folder, 'absent.csv'), folder), load()]);
    expect(code).toBe(1);
    expect(err).toMatch(/There is no file .*absent\.csv\./);
    expect(err).toMatch(/is a folder/);
    expect(nothing.err).toMatch(/Name at least one measurement file/);
  });
});
