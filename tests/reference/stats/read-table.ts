import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const FOLDER = new URL('../data/', import.meta.url);

/** A CSV file of the reference data without quoted fields, as one list of text a column. */
export function readTable(path: string): Record<string, string[]> {
  const [head = '', ...lines] = readFileSync(fileURLToPath(new URL(path, FOLDER)), 'utf8')
    .trim()
    .split(/\r?\n/);
  const names = head.split(',');
  const rows = lines.map((line) => line.split(','));
  return Object.fromEntries(names.map((name, i) => [name, rows.map((row) => row[i] ?? '')]));
}

/** A JSON file of the reference data; the caller states the shape it relies on. */
export function readResults(path: string): unknown {
  return JSON.parse(readFileSync(fileURLToPath(new URL(path, FOLDER)), 'utf8'));
}
