import { expect, it } from 'vitest';
import { databaseState, listPeople, savePeople } from '@/lib/store';
import { openDatabase } from '@/lib/store/connection/database';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { freshStore } from './fresh-store';
import { BY_COMMAND } from './invented-readings';

const store = freshStore();

/**
 * Whether reading leaves the word as it was. All databases of one server share its word, and tests of other files write to
 * theirs meanwhile, so it is asked until nobody did.
 */
async function staysAsIs(): Promise<boolean> {
  for (let turn = 0; turn < 50; turn++) {
    const before = await databaseState();
    await listPeople(store.shop);
    if ((await databaseState()) === before) return true;
  }
  return false;
}

it('what the database holds has the same word until something is written, by this process or by another', async () => {
  expect(await staysAsIs()).toBe(true);
  const before = await databaseState();

  await savePeople(store.shop, [{ code: 'NEW', name: '', role: 'trainer', active: true }], BY_COMMAND);
  const ours = await databaseState();
  expect(ours).not.toBe(before);

  const another = openDatabase(databaseUrl());
  await another.person.updateMany({ where: { code: 'NEW' }, data: { active: false } });
  await another.$disconnect();
  expect(await databaseState()).not.toBe(ours);
});
