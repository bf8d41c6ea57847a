import { expect, it } from 'vitest';
import { databaseState, listPeople, savePeople } from '@/lib/store';
import { openDatabase } from '@/lib/store/connection/database';
import { databaseUrl } from '@/lib/store/connection/database-url';
import { freshStore } from './fresh-store';
import { BY_COMMAND } from './invented-readings';

const store = freshStore();

it('what the database holds has the same word until something is written, by this process or by another', async () => {
  const before = await databaseState();
  await listPeople(store.shop);
  expect(await databaseState()).toBe(before);

  await savePeople(store.shop, [{ code: 'NEW', name: '', role: 'trainer', active: true }], BY_COMMAND);
  const ours = await databaseState();
  expect(ours).not.toBe(before);

  const another = openDatabase(databaseUrl());
  await another.person.updateMany({ where: { code: 'NEW' }, data: { active: false } });
  await another.$disconnect();
  expect(await databaseState()).not.toBe(ours);
});
