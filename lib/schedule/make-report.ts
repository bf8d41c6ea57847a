import type { Json, ShopId } from '@/lib/store';
import { failReport, keepReport } from '@/lib/store/reports';
import { storedReport } from './stored-report';

/** The largest report that is kept in the database, characters. */
const LARGEST = 64_000_000;

/**
 * Makes a report that was claimed and keeps it, or the reason why there is none.
 * @returns whether there is one.
 */
export async function makeReport(shop: ShopId, id: number): Promise<boolean> {
  const pieces = await storedReport(shop);
  if (pieces === null) {
    await failReport(shop, id, 'There were no figures yet: nothing had been loaded.');
    return false;
  }
  let text = '';
  for await (const piece of pieces) {
    text += piece;
    if (text.length > LARGEST) {
      const most = LARGEST / 1e6;
      await failReport(
        shop,
        id,
        `The report is larger than ${most} MB. Fetch /api/v1/report, which streams it.`,
      );
      return false;
    }
  }
  await keepReport(shop, id, JSON.parse(text) as Json);
  return true;
}
