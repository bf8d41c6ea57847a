import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { stagedFile, type StagedFile } from './staged-file';

/**
 * Uploaded files wait in a folder of their own until somebody confirms them: the bytes as `<id>.csv`, what was
 * found in them as `<id>.json`. What nobody has touched for a day is swept away.
 */
const KEPT_FOR = 24 * 3600 * 1000;

function folder(): string {
  return process.env.REHANG_STAGING_DIR ?? join(/*turbopackIgnore: true*/ process.cwd(), 'data', 'staged');
}

/** Where the bytes of a staged file are. */
export const bytesPath = (id: string) => join(/*turbopackIgnore: true*/ folder(), `${id}.csv`);
const recordPath = (id: string) => join(/*turbopackIgnore: true*/ folder(), `${id}.json`);

/** Beside it while some process is at work on the file. */
export const markPath = (id: string) => join(/*turbopackIgnore: true*/ folder(), `${id}.work`);

/** A fresh place for a file: its id, and the path to write its bytes to. */
export async function openStaging(): Promise<{ id: string; path: string }> {
  await mkdir(folder(), { recursive: true });
  await sweep();
  const id = randomUUID();
  return { id, path: bytesPath(id) };
}

export async function saveStaged(id: string, staged: StagedFile): Promise<void> {
  const path = recordPath(id);
  await writeFile(`${path}.new`, JSON.stringify(staged));
  await rename(`${path}.new`, path);
}

/** What is known of a staged file; null where there is none of this id, or only what an earlier version wrote. */
export async function readStaged(id: string): Promise<StagedFile | null> {
  try {
    return stagedFile.safeParse(JSON.parse(await readFile(recordPath(id), 'utf8'))).data ?? null;
  } catch (error) {
    if (isAbsent(error)) return null;
    throw error;
  }
}

/** The bytes of a staged file, in pieces. */
export function stagedBytes(id: string): AsyncIterable<Uint8Array> {
  return createReadStream(bytesPath(id), { highWaterMark: 256 * 1024 });
}

/** Takes the bytes away; what was found in them stays to be shown. */
export async function discardBytes(id: string): Promise<void> {
  await rm(bytesPath(id), { force: true });
}

async function sweep(): Promise<void> {
  const oldest = Date.now() - KEPT_FOR;
  for (const name of await readdir(folder())) {
    const path = join(/*turbopackIgnore: true*/ folder(), name);
    const { mtimeMs } = await stat(path).catch(() => ({ mtimeMs: Infinity }));
    if (mtimeMs < oldest) await rm(path, { force: true });
  }
}

function isAbsent(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT';
}
