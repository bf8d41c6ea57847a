import type { Viewer } from '@/lib/identity';
import * as refresh from '@/lib/refresh';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { demand } from './may';

/**
 * Changes the shop's name and time zone; figures by month follow another zone.
 * @throws Refused; RangeError where the zone is none or another shop has the name.
 */
export async function saveShop(viewer: Viewer, change: Pick<store.Shop, 'name' | 'timeZone'>): Promise<void> {
  demand(viewer, 'change settings');
  const { timeZone } = await store.saveShop(viewer.shop.id, change, actorOf(viewer));
  if (timeZone !== viewer.shop.timeZone) refresh.refreshSoon(viewer.shop.id);
}
