import type { Json } from '@/lib/store/types';

/** Documents that are held at once. */
const AT_ONCE = 200;

/**
 * The documents of some rows in the order of their ids, a few at a time. One that is gone meanwhile is left out.
 * @param ask the documents of these rows, in any order
 */
export async function* documentsInOrder(
  ids: readonly number[],
  ask: (ids: readonly number[]) => Promise<readonly { id: number; document: Json }[]>,
): AsyncGenerator<Json, void, undefined> {
  for (let start = 0; start < ids.length; start += AT_ONCE) {
    const some = ids.slice(start, start + AT_ONCE);
    const documents = new Map((await ask(some)).map(({ id, document }) => [id, document]));
    for (const id of some) {
      const document = documents.get(id);
      if (document !== undefined) yield document;
    }
  }
}
