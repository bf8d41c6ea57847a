import type { Queries } from '@/lib/store/connection/database';
import { inputsChanged } from '@/lib/store/shop/get-shop';
import type { ShopId } from '@/lib/store/types';
import type { Batch } from './batch';
import type { Known } from './known';
import { writeJobs, writeRounds, writeSetups } from './write-jobs';
import { writeObservations, type Origin } from './write-observations';
import { writeParents } from './write-parents';

/** Stores what a batch without conflicts adds, with every rollup and version that hangs on it. */
export async function writeBatch(
  queries: Queries,
  shop: ShopId,
  { batch, known }: { batch: Batch; known: Known },
  origin: Origin,
): Promise<{ causes: number }> {
  const written = await writeLaidOut(queries, shop, { batch, known }, origin);
  await inputsChanged(queries, shop);
  return written;
}

/** The same, for a part of what changes the shop together. */
export async function writeLaidOut(
  queries: Queries,
  shop: ShopId,
  { batch, known }: { batch: Batch; known: Known },
  origin: Origin,
): Promise<{ causes: number }> {
  const ids = await writeParents(queries, shop, batch, known);
  const jobs = await writeJobs(queries, shop, batch, ids);
  const rounds = await writeRounds(queries, shop, jobs, batch, ids);
  const setups = await writeSetups(queries, shop, jobs, rounds, batch, ids);
  return writeObservations(queries, shop, setups, batch, ids, origin);
}
