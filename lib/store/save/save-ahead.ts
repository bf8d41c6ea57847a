import { randomBytes } from 'node:crypto';
import type { Reading } from '@/lib/measure';
import { loading } from '@/lib/store/connection/database';
import { inputsChanged } from '@/lib/store/shop/get-shop';
import { among } from '@/lib/store/sql/among';
import type { Actor, SaveSummary, ShopId } from '@/lib/store/types';
import { FileBeingSaved } from './file-being-saved';
import { Contradicted, NewJobsBeingSaved } from './new-jobs-being-saved';
import type { NewRows } from './new-rows';
import { CHECKED, FOR_NEW_JOBS, INDEXED } from './save-table';

/** Jobs of a file that is still being read, with one reading for each of what no piece before them named. */
export interface PieceAhead {
  rows: NewRows;
  samples: Reading[];
  /** How much of the file was read by then, from 0 to 1. */
  share: number;
}

/** A file that is being read. */
export interface FileAhead {
  name: string;
  /** Whether it is stored so soon that others may wait for the database meanwhile. */
  short: boolean;
  /** Ends early where the file cannot be stored this way. */
  pieces: AsyncIterable<PieceAhead>;
  /** How the file turned out; `holds` where it says, as a whole, what its pieces were taken to say. */
  end: () => Promise<{ sha256: string; lines: number; holds: boolean }>;
}

/** It cannot be stored so: it is to be read to its end first. */
class ReadFirst extends Error {}

/**
 * Stores a file that brings new jobs alone while it is being read, as `saveFileReadings` stores it afterwards. What was
 * written counts for nothing unless the whole file turns out to say what its pieces did.
 * @param tell told the share that is written, from 0 to 1.
 * @returns null, with nothing stored, where it has to be read to its end first: it has a fault, comes back to a job, says
 * something of a sheet late, or holds what is stored already.
 */
export async function saveAhead(
  shop: ShopId,
  file: FileAhead,
  actor: Actor,
  tell: (share: number) => void,
): Promise<SaveSummary | null> {
  try {
    return await loading(shop, { shutOut: file.short }, async (queries, rows, within) => {
      const unread = { name: file.name, sha256: randomBytes(32).toString('hex'), lines: 0 };
      const kept = new FileBeingSaved(queries, shop, unread);
      const saved = new NewJobsBeingSaved(queries, rows, shop, await kept.id());
      const jobs: string[] = [];
      await rows.withoutIndexes(INDEXED, CHECKED, async () => {
        for await (const { rows: piece, samples, share } of file.pieces) {
          const numbers = piece.jobs.map(({ number }) => number);
          const there = await within.$queryRaw<unknown[]>`
            SELECT 1 AS "one" FROM "Job" WHERE "shopId" = ${shop} AND "number" ${among(numbers)} LIMIT 1`;
          if (there.length > 0) throw new ReadFirst();
          await saved.name(samples);
          await saved.write(piece);
          for (const number of numbers) jobs.push(number);
          tell(share);
        }
      });
      const { sha256, lines, holds } = await file.end();
      if (!holds || jobs.length === 0 || !(await kept.turnedOut(sha256, lines))) throw new ReadFirst();
      const { people, gauges, newSheets, counts } = saved;
      await inputsChanged(queries, shop);
      await kept.tell(actor, {
        added: counts.added,
        alreadyThere: 0,
        causes: counts.causes,
        jobs: jobs.length,
      });
      const [newPeople, newGauges] = [[...people].sort(), [...gauges].sort()];
      const all = { ...counts, alreadyThere: 0, jobs, newJobs: jobs.length, newSheets, newPeople, newGauges };
      return { result: all, sound: FOR_NEW_JOBS };
    });
  } catch (error) {
    if (error instanceof ReadFirst || error instanceof Contradicted) return null;
    throw error;
  }
}
