import { mkdtempSync, rmSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';

/** Gives a temporary folder on the disk of a file, for as long as the work takes. */
export async function beside<Result>(
  file: string,
  work: (folder: string) => Promise<Result>,
): Promise<Result> {
  const folder = mkdtempSync(join(dirname(resolve(file)), `.${basename(file)}-`));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
