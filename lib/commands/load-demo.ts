import { createHash } from 'node:crypto';
import {
  getGauge,
  recordVerification,
  saveGauges,
  savePeople,
  saveReadings,
  saveSheet,
  saveShop,
  type ShopId,
} from '@/lib/store';
import { demoShop } from '@/seed';

/** Fills an empty shop with the invented one. */
export async function loadDemo(shop: ShopId, say: (line: string) => void): Promise<void> {
  say('The database is empty: inventing the demo shop …');
  const demo = demoShop();
  await saveShop(shop, demo.shop);
  await savePeople(shop, demo.people);
  await saveGauges(
    shop,
    demo.gauges.map(({ verifications: _, ...gauge }) => gauge),
  );
  for (const sheet of demo.sheets) await saveSheet(shop, sheet);
  for (const { tag, verifications } of demo.gauges) {
    const kept = await getGauge(shop, tag);
    // There already where an earlier start was broken off.
    const times = new Set(kept?.verifications.map(({ at }) => at));
    for (const verification of verifications)
      if (!times.has(verification.at)) await recordVerification(shop, verification);
  }
  const sha256 = createHash('sha256').update(JSON.stringify(demo.readings)).digest('hex');
  const source = { name: 'demo shop', sha256, lines: demo.readings.length };
  const { added, newJobs } = await saveReadings(shop, demo.readings, source);
  say(`Demo shop stored: ${newJobs} jobs, ${added} readings.`);
}
