import type { Fault, FileSummary } from '@/lib/measure';
import { tableReadings, type FileReadings } from '@/lib/store/save/file-readings';
import { readPath, type PathToRead } from './read-path';
import { ReadingThread } from './reading-thread';

/** A measurement file that was read; `readings` is null where there is any fault. */
export interface FileRead {
  faults: Fault[];
  summary: FileSummary;
  sha256: string;
  readings: FileReadings | null;
}

/** Smaller files are read before a thread has started, bytes. */
const WORTH_A_THREAD = 4_000_000;

/**
 * Reads a file and does something with it. A large one is read and held by a thread of its own, which goes on laying
 * out what comes next while its readings are stored; it ends with the work.
 * @param tell told the share that is read, from 0 to 1.
 */
export async function withFile<Result>(
  of: PathToRead,
  tell: (share: number) => void,
  work: (file: FileRead) => Promise<Result>,
): Promise<Result> {
  if (of.bytes < WORTH_A_THREAD) {
    const { readings, ...rest } = await readPath(of, tell);
    return work({ ...rest, readings: readings && tableReadings(readings) });
  }
  const thread = new ReadingThread(tell);
  try {
    const { held, ...rest } = await thread.read(of);
    return await work({ ...rest, readings: held && thread.readings(held) });
  } finally {
    await thread.close();
  }
}
