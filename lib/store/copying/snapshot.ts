import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import Database from 'better-sqlite3';

const WAIT_MS = 60_000;

/**
 * Writes a SQLite database as of this moment into a file of its own, while others read and write it. The file
 * takes its name only once it is whole, sound and on the disk.
 * @throws RangeError in words where the file exists, or the copy is not sound.
 */
export function snapshot(path: string, file: string): void {
  if (!existsSync(path)) throw new RangeError(`There is no database at ${path}.`);
  if (existsSync(file)) throw new RangeError(`${file} exists already. Name a file that does not.`);
  const part = `${file}.part`;
  rmSync(part, { force: true });
  const database = new Database(path, { timeout: WAIT_MS });
  try {
    database.prepare('VACUUM INTO ?').run(part);
    checkSound(part);
    toDisk(part);
    renameSync(part, file);
    toDisk(dirname(resolve(file)));
  } finally {
    database.close();
    rmSync(part, { force: true });
  }
}

/** @throws RangeError in words where the file is no database, is damaged, or has rows that refer to nothing. */
export function checkSound(file: string): void {
  const database = new Database(file, { readonly: true, fileMustExist: true });
  try {
    const found = database.pragma('integrity_check', { simple: true });
    if (found !== 'ok') throw new RangeError(`${file} is damaged: ${String(found)}`);
    const broken = database.pragma('foreign_key_check') as unknown[];
    if (broken.length > 0) throw new RangeError(`${file} has ${broken.length} rows that refer to nothing.`);
  } catch (error) {
    if (error instanceof Database.SqliteError) throw new RangeError(`${file} is damaged: ${error.message}.`);
    throw error;
  } finally {
    database.close();
  }
}

function toDisk(path: string): void {
  const handle = openSync(path, 'r');
  fsyncSync(handle);
  closeSync(handle);
}
