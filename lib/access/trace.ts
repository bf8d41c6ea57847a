import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { demand } from './may';

/** What was done in the shop, the latest first. @throws Refused */
export async function listTrace(
  viewer: Viewer,
  query: store.TraceQuery,
): Promise<store.Page<store.TraceRow>> {
  demand(viewer, 'see the trace');
  return store.listTrace(viewer.shop.id, query);
}

/** All that concerns one person: the viewer, or for the manager anybody. Null where there is nobody of the code. @throws Refused */
export async function personalExport(viewer: Viewer, code: string): Promise<store.Json> {
  if (code !== viewer.code) demand(viewer, 'manage people');
  return store.personalExport(viewer.shop.id, code);
}

/**
 * Removes a person; the shop's numbers stay under a pseudonym, which is returned.
 * @throws Refused; RangeError where it cannot be done.
 */
export async function removePerson(viewer: Viewer, code: string, reason: string): Promise<string> {
  demand(viewer, 'manage people');
  if (code === viewer.code) throw new RangeError('Nobody removes themselves: have another manager do it.');
  return store.removePerson(viewer.shop.id, code, reason, actorOf(viewer));
}
