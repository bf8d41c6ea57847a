import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { demand } from './may';

/** Sheets belong to the shop: everybody may look. Null where there is none of this name. */
export const openSheet = (viewer: Viewer, name: string) => store.openSheet(viewer.shop.id, name);
export const sheetHistory = (viewer: Viewer, name: string) => store.sheetHistory(viewer.shop.id, name);

/** @throws Refused; RangeError where the name is taken or none, or the sheet has a fault. */
export async function createSheet(
  viewer: Viewer,
  sheet: store.Sheet,
  origin: 'entered' | 'loaded',
): Promise<void> {
  demand(viewer, 'keep sheets');
  await store.createSheet(viewer.shop.id, sheet, origin, actorOf(viewer));
}

/** @throws Refused; RangeError where there is no such sheet, or the name is taken. */
export async function copySheet(viewer: Viewer, from: string, name: string): Promise<void> {
  demand(viewer, 'keep sheets');
  await store.copySheet(viewer.shop.id, from, name, actorOf(viewer));
}

/** @throws Refused; RangeError where it cannot be corrected so. */
export async function correctSheet(
  viewer: Viewer,
  name: string,
  correction: store.SheetCorrection,
): Promise<store.SheetCorrected> {
  demand(viewer, 'keep sheets');
  return store.correctSheet(viewer.shop.id, name, correction, actorOf(viewer));
}

/** @throws Refused; RangeError where there is no such sheet, or it stands so already. */
export async function retireSheet(viewer: Viewer, name: string, retired: boolean): Promise<void> {
  demand(viewer, 'keep sheets');
  await store.retireSheet(viewer.shop.id, name, retired, actorOf(viewer));
}
