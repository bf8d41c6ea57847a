import { listGauges, listJobs, listPeople, loadJobs, readingsFor, sheetBook } from '@/lib/store';
import type { Reading } from '@/lib/measure';

/** All that a shop is asked for, without the numbers of rows. */
export async function heldBy(shop: number) {
  const readings: Reading[] = [];
  for await (const reading of readingsFor(shop)) readings.push(reading);
  return {
    readings,
    jobs: await loadJobs(shop),
    list: (await listJobs(shop, {})).rows,
    people: await listPeople(shop),
    gauges: (await listGauges(shop)).map(({ tag, kind }) => ({ tag, kind })),
    sheets: await sheetBook(shop),
  };
}
