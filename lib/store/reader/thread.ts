import { parentPort } from 'node:worker_threads';
import {
  outlineOf,
  tableReadings,
  type FileOutline,
  type FileReadings,
} from '@/lib/store/save/file-readings';
import { buffersOf } from '@/lib/store/save/new-rows';
import type { PieceAhead } from '@/lib/store/save/save-ahead';
import { LaidOutAhead } from './laid-out-ahead';
import { readPath, type PathToRead, type ReadPath } from './read-path';

/** What is asked of the thread that reads a file and holds its readings. */
export interface Asked {
  read: (of: ToRead) => ThreadRead;
  samples: FileReadings['samples'];
  readingsOf: FileReadings['readingsOf'];
  all: FileReadings['all'];
  layOut: FileReadings['layOut'];
}

export type Asking = {
  [Method in keyof Asked]: { method: Method; of: Parameters<Asked[Method]>[0] };
}[keyof Asked];

/** What is said to the thread out of turn: a piece was written, or no more are wanted. */
export type Told = { ahead: 'taken' | 'stop' };

export interface ToRead extends PathToRead {
  /** Lines of a piece that is handed out while the file is read; 0 for none. */
  ahead: number;
}

/**
 * The answer to `read`: `held` is null where there is any fault, or anything was handed out; `holds` where that is what the
 * file says, read to its end.
 */
export interface ThreadRead extends Omit<ReadPath, 'readings'> {
  held: FileOutline | null;
  holds: boolean;
}

/** What comes of the thread: shares that are read, pieces ahead, and answers in the order of what was asked. */
export type Said = { share: number } | { piece: PieceAhead | null } | { answer: unknown };

let readings: FileReadings | null = null;

function held(): FileReadings {
  if (readings === null) throw new Error('There are no readings before a file without faults was read.');
  return readings;
}

let ahead: LaidOutAhead | null = null;

async function read(of: ToRead): Promise<ThreadRead> {
  let told = 0;
  ahead =
    of.ahead === 0
      ? null
      : new LaidOutAhead(of.ahead, (piece) => say({ piece }, piece === null ? [] : buffersOf(piece.rows)));
  const tell = (share: number) => {
    // What is written meanwhile is told of by whoever writes it.
    if (of.ahead > 0 || share < told + 0.01) return;
    told = share;
    say({ share });
  };
  const { readings: table, ...rest } = await readPath(of, tell, ahead ?? undefined);
  const holds = ahead?.holds() ?? false;
  ahead = null;
  if (table === null) return { ...rest, held: null, holds };
  const outline = outlineOf(table);
  readings = tableReadings(table, outline);
  return { ...rest, held: outline, holds };
}

async function answerTo(asking: Asking): Promise<void> {
  switch (asking.method) {
    case 'read':
      return say({ answer: await read(asking.of) });
    case 'samples':
      return say({ answer: await held().samples() });
    case 'readingsOf':
      return say({ answer: await held().readingsOf(asking.of) });
    case 'all':
      return say({ answer: await held().all() });
    case 'layOut': {
      const rows = await held().layOut(asking.of);
      return say({ answer: rows }, buffersOf(rows));
    }
  }
}

const say = (said: Said, moved: ArrayBuffer[] = []) => parentPort?.postMessage(said, moved);

// One after another. An error is thrown on: it ends this thread and comes to the other as the error of what was asked.
let last = Promise.resolve();
parentPort?.on('message', (message: Asking | Told) => {
  if ('method' in message) last = last.then(() => answerTo(message));
  else if (message.ahead === 'taken') ahead?.taken();
  else ahead?.stop();
});
