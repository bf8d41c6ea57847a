import { DATABASE, openDatabase, within } from './database';

/** Of the copies of pages that the worker keeps. */
export const COPIES = 'rehang-bay';

/**
 * Takes from this device what nobody needs on it who is not signed in: copies of pages, and rounds whose entries the
 * shop has. What it has not stays, for the person who entered it.
 * @param except whose rounds stay: the one who is signed in.
 */
export async function forget(except: string | null = null): Promise<void> {
  if (except === null && typeof caches !== 'undefined') await caches.delete(COPIES).catch(() => false);
  const there = await indexedDB.databases().catch(() => []);
  if (!there.some(({ name }) => name === DATABASE)) return;
  const database = await openDatabase();
  const work = database.transaction(['rounds', 'kept', 'outbox', 'people'], 'readwrite');
  const [rounds, people] = await Promise.all([
    work.objectStore('rounds').getAllKeys(),
    work.objectStore('people').getAllKeys(),
  ]);
  const unsent = new Set<string>();
  for (const [who, round] of rounds) {
    if (who === except) continue;
    const waits = (await work.objectStore('outbox').count(within(who, round))) > 0;
    if (waits) unsent.add(who);
    await work.objectStore('kept').delete(within(who, round));
    const row = await work.objectStore('rounds').get([who, round]);
    if (!waits || row === undefined) await work.objectStore('rounds').delete([who, round]);
    // All of it is to be told anew, from the beginning.
    else await work.objectStore('rounds').put({ ...row, since: 0 }, [who, round]);
  }
  for (const who of people)
    if (who !== except && !unsent.has(who)) await work.objectStore('people').delete(who);
  await work.done;
  database.close();
}
