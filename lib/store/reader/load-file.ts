import { stat } from 'node:fs/promises';
import { setFlagsFromString } from 'node:v8';
import type { Fault, FileSummary } from '@/lib/measure';
import { tableReadings } from '@/lib/store/save/file-readings';
import { saveAhead } from '@/lib/store/save/save-ahead';
import { isLarge, saveFileReadings } from '@/lib/store/save/save-table';
import type { Actor, SaveSummary, ShopId } from '@/lib/store/types';
import { readPath, type PathToRead } from './read-path';
import { ReadingThread } from './reading-thread';

/** What came of a measurement file; `saved` is null where there is any fault. */
export interface FileLoaded {
  faults: Fault[];
  summary: FileSummary;
  sha256: string;
  saved: SaveSummary | null;
}

/** Told the share of a file that is read, and stored, from 0 to 1. */
export interface Progress {
  read: (share: number) => void;
  stored: (share: number) => void;
}

/** Reading and writing in pieces needs little room: otherwise the heap grows as if there were plenty. */
const LEAN = ['--heap-growing-percent=15', '--semi-space-growth-factor=1'];
const AS_EVER = ['--heap-growing-percent=0', '--semi-space-growth-factor=2'];

/** Smaller files are read before a thread has started, bytes. */
const WORTH_A_THREAD = 4_000_000;
/** Of a line, about. */
const BYTES_A_LINE = 128;
/** A file that is stored within the half minute that others wait for the database, with time to spare, bytes. */
const SHORT = 200_000_000;
/** Lines that are laid out at once while a file is being read. */
const AHEAD = 10_000;

let ready: ReadingThread | null = null;

/** Begins the thread that a large file is read by, where one of these is large: it does so while the database is opened. */
export async function getReady(paths: readonly string[]): Promise<void> {
  const sizes = await Promise.all(
    // Of what cannot be read whoever reads it will say so.
    paths.map((path) =>
      stat(path).then(
        ({ size }) => size,
        () => 0,
      ),
    ),
  );
  if (ready !== null || !sizes.some((bytes) => bytes >= WORTH_A_THREAD)) return;
  ready = new ReadingThread();
  ready.holdsOpen(false);
}

function begun(tell: ReadingThread['tell']): ReadingThread {
  const thread = ready ?? new ReadingThread();
  ready = null;
  thread.tell = tell;
  thread.holdsOpen(true);
  return thread;
}

/**
 * Reads a file and stores it, whole or not at all. A large one is read by a thread of its own; where it brings more than
 * is stored, and new jobs alone, it is written while it is still being read.
 * @param ahead lines of a piece that is written meanwhile; 0 where it is read to its end first. By default as it is large.
 * @throws StoreConflict naming every line that contradicts what is stored.
 */
export async function loadFile(
  shop: ShopId,
  of: PathToRead,
  actor: Actor,
  progress: Progress,
  ahead?: number,
): Promise<FileLoaded> {
  const { name } = of;
  if (ahead === undefined && of.bytes < WORTH_A_THREAD) {
    const { readings, sha256, ...rest } = await readPath(of, progress.read);
    const file = { name, sha256, lines: rest.summary.lines };
    const saved =
      readings && (await saveFileReadings(shop, tableReadings(readings), file, actor, progress.stored));
    return { ...rest, sha256, saved };
  }
  const lines = ahead ?? ((await isLarge(Math.floor(of.bytes / BYTES_A_LINE))) ? AHEAD : 0);
  for (const flag of LEAN) setFlagsFromString(flag);
  const thread = begun(progress.read);
  try {
    const reading = thread.read(of, lines);
    // Whoever waits for it hears of it.
    reading.catch(() => undefined);
    const end = async () => {
      const { sha256, summary, holds } = await reading;
      return { sha256, lines: summary.lines, holds };
    };
    const file = { name, short: of.bytes <= SHORT, pieces: thread.pieces(), end };
    const written = lines === 0 ? null : await saveAhead(shop, file, actor, progress.stored);
    // What was handed out while it was read is held no more.
    const { held, faults, summary, sha256 } = await (lines === 0 || written !== null
      ? reading
      : thread.read(of));
    const rest = { faults, summary, sha256 };
    if (written !== null || held === null) return { ...rest, saved: written };
    const named = { name, sha256, lines: summary.lines };
    return {
      ...rest,
      saved: await saveFileReadings(shop, thread.readings(held), named, actor, progress.stored),
    };
  } finally {
    await thread.close();
    for (const flag of AS_EVER) setFlagsFromString(flag);
  }
}
