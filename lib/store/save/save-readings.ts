import type { Reading } from '@/lib/measure';
import { transaction } from '@/lib/store/connection/database';
import type { Actor, SaveSummary, ShopId, SourceFile } from '@/lib/store/types';
import { gains, type Batch } from './batch';
import { StoreConflict } from './conflicts';
import { FileBeingSaved } from './file-being-saved';
import { layOut } from './lay-out';
import { readKnown } from './read-known';
import type { Known } from './known';
import { writeBatch } from './write-batch';
import { gainsAnything } from './write-jobs';
import { newGauges, newPeople } from './write-parents';

/**
 * Stores readings with their collapsed form, all or nothing. A reading that is stored already is skipped, so
 * the same file twice adds nothing, also where one of its readings was corrected or excluded since: that stays
 * as it is. People, gauges, sheets, jobs and setups that are new come with it; a code that belonged to somebody
 * who was removed makes a new person.
 * @throws StoreConflict naming every line that contradicts what is stored.
 */
export function saveReadings(
  shop: ShopId,
  readings: readonly Reading[],
  file: SourceFile,
  actor: Actor,
): Promise<SaveSummary> {
  return transaction(shop, async (queries) => {
    const known = await readKnown(queries, shop, readings);
    const { batch, conflicts } = layOut(readings, known);
    if (conflicts.length > 0) throw new StoreConflict(conflicts);
    const summary = summaryOf(batch, known);
    if (summary.jobs.length === 0) return summary;
    const saved = new FileBeingSaved(queries, shop, file);
    const { causes } = await writeBatch(queries, shop, { batch, known }, { fileId: await saved.id() });
    const { added, alreadyThere } = summary;
    await saved.tell(actor, { added, alreadyThere, causes, jobs: summary.jobs.length });
    return { ...summary, causes };
  });
}

export function summaryOf(batch: Batch, known: Known): SaveSummary {
  const jobs = [...batch.jobs.values()].filter((job) => gainsAnything(job.setups.values()));
  const setups = jobs.flatMap((job) => [...job.setups.values()]).filter((setup) => gainsAnything([setup]));
  const observations = setups.flatMap((setup) => [...setup.observations.values()]).filter(gains);
  return {
    added: observations.reduce((sum, { added }) => sum + added.length, 0),
    alreadyThere: batch.alreadyThere,
    causes: 0,
    jobs: jobs.map((job) => job.number),
    newJobs: jobs.filter((job) => job.known === null).length,
    newSetups: setups.filter((setup) => setup.known === null).length,
    newSheets: batch.sheets.filter((sheet) => sheet.name !== null && sheet.known === null).length,
    newPeople: newPeople(batch, known),
    newGauges: newGauges(batch),
  };
}
