import { readFile, rm, stat, writeFile } from 'node:fs/promises';
import { z } from 'zod';
import { TASKS } from './task';
import { markPath } from './staging';

/**
 * A small file beside the staged one says that some process is at work on it: several may serve one shop, and each
 * must tell the same. Written anew every few seconds; one that is older was left by a process that is gone.
 */
const BEAT_MS = 3_000;
const GONE_MS = 15_000;

const mark = z.object({ task: z.enum(TASKS), share: z.number().min(0).max(1) });
export type Mark = z.infer<typeof mark>;

/** @returns false where another process is at work on the file. */
export async function setMark(id: string, work: Mark): Promise<boolean> {
  if (await made(id, work)) return true;
  if ((await readMark(id)) !== null) return false;
  // Left by a process that is gone.
  await rm(markPath(id), { force: true });
  return made(id, work);
}

/** Of several that come at once the file system lets one make the file. */
async function made(id: string, work: Mark): Promise<boolean> {
  try {
    await writeFile(markPath(id), JSON.stringify(work), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

/** Keeps the mark fresh until the returned function is called, which takes it away. */
export function keepMark(id: string, work: Mark): () => Promise<void> {
  const beat = setInterval(() => {
    writeFile(markPath(id), JSON.stringify(work)).catch(() => undefined);
  }, BEAT_MS);
  return async () => {
    clearInterval(beat);
    await rm(markPath(id), { force: true });
  };
}

/** What some process is doing with the file; null where none is. */
export async function readMark(id: string): Promise<Mark | null> {
  try {
    const { mtimeMs } = await stat(markPath(id));
    if (Date.now() - mtimeMs > GONE_MS) return null;
    return parsed(await readFile(markPath(id), 'utf8'));
  } catch {
    // Taken away in this very moment.
    return null;
  }
}

/** One that is just being written says as little as one that has just begun. */
function parsed(text: string): Mark {
  try {
    return mark.parse(JSON.parse(text));
  } catch {
    return { task: 'check', share: 0 };
  }
}
