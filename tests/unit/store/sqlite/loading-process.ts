/** Run as a process of its own: loads people into the database, alone, says how it is written, and never ends. */
import { getShop } from '@/lib/store';
import { engine, loading } from '@/lib/store/connection/database';
import { fillWithPeople } from './filling';

const { id } = await getShop();
const { sqlite } = await engine();
await loading(id, { shutOut: true }, async (_, rows) => {
  await fillWithPeople(rows, id);
  console.log(sqlite?.writer.pragma('journal_mode', { simple: true }));
  return new Promise<never>((resolve) => setTimeout(resolve, 600_000));
});
