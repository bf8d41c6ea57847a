import { shopOfId } from '@/lib/store';
import { checkStagedFile, type Tell } from './check';
import { discardBytes, readStaged, saveStaged } from './staging';
import { storeStagedFile } from './store';

/** What can be done with a file that waits. */
export const TASKS = ['check', 'store'] as const;
export type Task = (typeof TASKS)[number];

/**
 * Checks or stores the staged file of this id and keeps what came of it beside the file.
 * @param store how it is stored.
 */
export async function doTask(
  task: Task,
  id: string,
  tell: Tell,
  store: typeof storeStagedFile = storeStagedFile,
): Promise<void> {
  const staged = await readStaged(id);
  if (staged === null) throw new Error(`No file of the id ${id} is waiting.`);
  const shop = await shopOfId(staged.shop);
  if (shop === null) throw new Error(`There is no shop ${staged.shop} any more.`);
  const after = await (task === 'check' ? checkStagedFile : store)(id, staged, shop, tell);
  await saveStaged(id, after);
  if (after.result !== null || (after.checked?.faultCount ?? 0) > 0) await discardBytes(id);
}
