import { parentPort } from 'node:worker_threads';
import {
  outlineOf,
  tableReadings,
  type FileOutline,
  type FileReadings,
} from '@/lib/store/save/file-readings';
import { buffersOf } from '@/lib/store/save/new-rows';
import { readPath, type PathToRead, type ReadPath } from './read-path';

/** What is asked of the thread that reads a file and holds its readings. */
export interface Asked {
  read: (of: PathToRead) => ThreadRead;
  samples: FileReadings['samples'];
  readingsOf: FileReadings['readingsOf'];
  all: FileReadings['all'];
  know: FileReadings['know'];
  layOut: FileReadings['layOut'];
}

export type Asking = {
  [Method in keyof Asked]: { method: Method; of: Parameters<Asked[Method]>[0] };
}[keyof Asked];

/** The answer to `read`: `held` is null where there is any fault. */
export interface ThreadRead extends Omit<ReadPath, 'readings'> {
  held: FileOutline | null;
}

/** What comes of the thread: shares that are read, and answers in the order of what was asked. */
export type Said = { share: number } | { answer: unknown };

let readings: FileReadings | null = null;

function held(): FileReadings {
  if (readings === null) throw new Error('There are no readings before a file without faults was read.');
  return readings;
}

async function read(of: PathToRead): Promise<ThreadRead> {
  let told = 0;
  const { readings: table, ...rest } = await readPath(of, (share) => {
    if (share < told + 0.01) return;
    told = share;
    say({ share });
  });
  if (table === null) return { ...rest, held: null };
  const outline = outlineOf(table);
  readings = tableReadings(table, outline);
  return { ...rest, held: outline };
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
    case 'know':
      return say({ answer: await held().know(asking.of) });
    case 'layOut': {
      const rows = await held().layOut(asking.of);
      return say({ answer: rows }, buffersOf(rows));
    }
  }
}

const say = (said: Said, moved: ArrayBuffer[] = []) => parentPort?.postMessage(said, moved);

// One after another. An error is thrown on: it ends this thread and comes to the other as the error of what was asked.
let last = Promise.resolve();
parentPort?.on('message', (asking: Asking) => {
  last = last.then(() => answerTo(asking));
});
