import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';
import { demand } from './may';

/** The files loaded so far, newest first. @throws Refused */
export async function listLoadedFiles(viewer: Viewer): Promise<store.LoadedFile[]> {
  demand(viewer, 'load files');
  return store.listLoadedFiles(viewer.shop.id);
}

/** Whose staged file this is; nobody else gets to see that it is there. @throws Refused */
export function mayHandle(viewer: Viewer, staged: { shop: number }): boolean {
  demand(viewer, 'load files');
  return staged.shop === viewer.shop.id;
}
