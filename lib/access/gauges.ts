import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';

/** Gauges belong to the shop: everybody sees them, their state and their bias. */
export const listGauges = (viewer: Viewer) => store.listGauges(viewer.shop.id);
export const getGauge = (viewer: Viewer, tag: string) => store.getGauge(viewer.shop.id, tag);
