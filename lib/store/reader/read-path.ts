import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import {
  tabulateMeasurementFile,
  type BeingRead,
  type Dimension,
  type ReadOptions,
  type TabledFile,
} from '@/lib/measure';
import { knownSheets } from './known-sheets';

/** A measurement file on the disk, and what its lines are held to. */
export interface PathToRead {
  path: string;
  name: string;
  bytes: number;
  timeZone: string;
  /** The sheets that the shop knows. */
  book: ReadonlyMap<string, readonly Dimension[]>;
}

/** A file that is read, with the digest of its bytes. */
export interface ReadPath extends TabledFile {
  /** In hexadecimal. */
  sha256: string;
}

/** Bytes that are asked of the disk at once. */
const PIECE = 1 << 18;

/** Who does something with a file while it is being read. */
export interface Alongside {
  begun(file: BeingRead, knownSheets: ReadOptions['knownSheets']): void;
  /** Called again and again; nothing more is read until it is done, and nothing at all once it has stopped. */
  went(share: number): Promise<void>;
  readonly stopped: boolean;
  /** All bytes were read; the last line ends with them, or is the last one to come. */
  ended(): Promise<void>;
}

/** @param tell told the share that is read, from 0 to 1. */
export async function readPath(
  { path, name, bytes, timeZone, book }: PathToRead,
  tell: (share: number) => void,
  alongside?: Alongside,
): Promise<ReadPath> {
  const known = knownSheets(book);
  const knownOf = (sheet: string) => known.get(sheet);
  const digest = createHash('sha256');
  const pieces = async function* () {
    let read = 0;
    for await (const piece of createReadStream(path, { highWaterMark: PIECE }) as AsyncIterable<Buffer>) {
      digest.update(piece);
      yield piece;
      read += piece.length;
      const share = bytes === 0 ? 1 : Math.min(1, read / bytes);
      tell(share);
      await alongside?.went(share);
      if (alongside?.stopped === true) return;
    }
    await alongside?.ended();
  };
  const options = { name, bytes, timeZone, knownSheets: knownOf };
  const file = await tabulateMeasurementFile(pieces(), options, (begun) => alongside?.begun(begun, knownOf));
  return { ...file, sha256: digest.digest('hex') };
}
