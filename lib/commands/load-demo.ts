import { createHash } from 'node:crypto';
import {
  beginBayRound,
  closeTrial,
  createTrial,
  enterTrialReading,
  getGauge,
  listTrials,
  recordVerification,
  saveGauges,
  savePeople,
  saveReadings,
  saveSheet,
  saveShop,
  takeBayEntries,
  type ShopId,
} from '@/lib/store';
import { hashPassword } from '@/lib/identity';
import { DEMO_PASSWORD } from '@/lib/identity/demo';
import { openDemo } from '@/lib/store/accounts';
import { DEMO_SEED, demoBayRound, demoShop, demoTrials } from '@/seed';

const BY_PROGRAM = { person: null, via: 'program' } as const;

/** Manager, trainer and a technician of the invented shop. */
const WAYS_IN = ['GRE', 'HOL', 'QUI'];

/** Fills an empty shop with the invented one. */
export async function loadDemo(shop: ShopId, say: (line: string) => void): Promise<void> {
  say('The database is empty: inventing the demo shop …');
  const demo = demoShop();
  await saveShop(shop, demo.shop, BY_PROGRAM);
  await savePeople(shop, demo.people, BY_PROGRAM);
  await saveGauges(
    shop,
    demo.gauges.map(({ verifications: _, ...gauge }) => gauge),
    BY_PROGRAM,
  );
  for (const sheet of demo.sheets) await saveSheet(shop, sheet, BY_PROGRAM);
  for (const { tag, verifications } of demo.gauges) {
    const kept = await getGauge(shop, tag);
    // There already where an earlier start was broken off.
    const times = new Set(kept?.verifications.map(({ at }) => at));
    for (const verification of verifications)
      if (!times.has(verification.at)) await recordVerification(shop, verification, BY_PROGRAM);
  }
  await loadTrials(shop);
  const sha256 = createHash('sha256').update(JSON.stringify(demo.readings)).digest('hex');
  const source = { name: 'demo shop', sha256, lines: demo.readings.length };
  const { added, newJobs } = await saveReadings(shop, demo.readings, source, BY_PROGRAM);
  await beginRound(shop, demo.readings.at(-1)?.takenAt ?? 0);
  await openDemo(shop, WAYS_IN, await hashPassword(DEMO_PASSWORD));
  say(`Demo shop stored: ${newJobs} jobs, ${added} readings.`);
}

/** The round that a technician is in the middle of. What an earlier start kept of it is not kept twice. */
async function beginRound(shop: ShopId, after: number): Promise<void> {
  const { round, by, entries } = demoBayRound(after);
  const id = await beginBayRound(shop, round, by, BY_PROGRAM);
  await takeBayEntries(shop, id, entries, { by, forOthers: false }, BY_PROGRAM);
}

/** The trials that the trainer ran, unless an earlier start got that far. */
async function loadTrials(shop: ShopId): Promise<void> {
  const known = new Set((await listTrials(shop)).map(({ name }) => name));
  for (const { name, plan, readings } of demoTrials(DEMO_SEED)) {
    if (known.has(name)) continue;
    const id = await createTrial(shop, { name, plan }, BY_PROGRAM);
    for (const reading of readings) await enterTrialReading(shop, id, reading, BY_PROGRAM);
    await closeTrial(shop, id, BY_PROGRAM);
  }
}
