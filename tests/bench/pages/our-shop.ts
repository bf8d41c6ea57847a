import { listJobs, closeStore, listPeople, listSheets, listShops, savePeople } from '@/lib/store';
import { invite } from '@/lib/store/accounts';

/**
 * Run as a process of its own on shops with their history: adds a manager to the first, and prints where the manager
 * comes in and what there is to open.
 */
const [first] = await listShops();
if (first === undefined) throw new Error('There is no shop to open.');
const shop = first.id;
const actor = { person: null, via: 'command' } as const;
await savePeople(shop, [{ code: 'BENCH', name: '', role: 'manager', active: true }], actor);
const technician = (await listPeople(shop)).find(({ role }) => role === 'technician')?.code ?? '';
const jobs = await listJobs(shop, { pageSize: 1, stage: 'after' });
const [sheet] = await listSheets(shop);
const found = {
  invitation: await invite(shop, 'BENCH', actor),
  technician,
  job: jobs.rows[0]?.job ?? '',
  sheet: sheet?.name ?? '',
};
console.log(JSON.stringify(found));
await closeStore();
