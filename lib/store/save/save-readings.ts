import type { Reading } from '@/lib/measure';
import { transaction, type Queries } from '@/lib/store/connection/database';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, SaveSummary, ShopId, SourceFile } from '@/lib/store/types';
import { gains, type Batch } from './batch';
import { StoreConflict } from './conflicts';
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
    const fileId = await writeFile(queries, shop, file, summary);
    const { causes } = await writeBatch(queries, shop, { batch, known }, { fileId });
    const { added, alreadyThere } = summary;
    await writeTrace(queries, shop, actor, {
      action: 'loaded',
      kind: 'file',
      subject: subjectOf.file(fileId),
      after: {
        sha256: file.sha256,
        lines: file.lines,
        added,
        alreadyThere,
        causes,
        jobs: summary.jobs.length,
      },
    });
    return { ...summary, causes };
  });
}

function summaryOf(batch: Batch, known: Known): SaveSummary {
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

/** The same file again (with a cause filled in elsewhere, say) keeps its first row. */
async function writeFile(
  queries: Queries,
  shop: ShopId,
  file: SourceFile,
  summary: SaveSummary,
): Promise<number> {
  const { sha256, name, lines } = file;
  const { added, alreadyThere } = summary;
  const row = await queries.loadedFile.upsert({
    where: { shopId_sha256: { shopId: shop, sha256 } },
    create: { shopId: shop, sha256, name, lines, added, alreadyThere, loadedAt: new Date() },
    update: {},
    select: { id: true },
  });
  return row.id;
}
