import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A file of tests/reference/samples, as bytes. */
export function sample(name: string): Buffer {
  return readFileSync(fileURLToPath(new URL(`../../reference/samples/${name}`, import.meta.url)));
}
