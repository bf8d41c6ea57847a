import { expect, it } from 'vitest';
import { countJobs } from '@/lib/store';
import { loading } from '@/lib/store/connection/database';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();

it('a load whose rows refer to nothing keeps none of them, though references are not looked up row by row', async () => {
  const job = [store.shop, 'J1', 999, 'j1', '2026-03-02T08:00:00.000+00:00', '2026-03-02T08:00:00.000+00:00'];
  const load = loading(store.shop, async (_, rows) => {
    const jobs = rows.into('Job', [
      ...['shopId', 'number', 'sheetId', 'searchText', 'openedAt', 'lastReadAt', 'lastStage', 'lastAttempt'],
      ...['technicianId', 'roundCount', 'setupCount', 'readingCount'],
    ]);
    jobs.add([...job, 'before', 1, 999, 1, 1, 1]);
    await jobs.flush();
    return { result: null, sound: ['Setup'] };
  });
  await expect(load).rejects.toThrow(/nothing was stored/);
  expect(await countJobs(store.shop)).toBe(0);
});
