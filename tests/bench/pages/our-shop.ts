import { listJobs, closeStore, getShop, listPeople, listSheets, savePeople } from '@/lib/store';
import { invite } from '@/lib/store/accounts';

/**
 * Run as a process of its own on a shop with its history: adds a manager, and prints where the manager comes in and
 * what there is to open.
 */
const shop = (await getShop()).id;
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
