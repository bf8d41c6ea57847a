/**
 * The one door between pages and data. Every function takes who is asking, gives no more than that person may
 * have, and nothing of another shop. Pages, actions and endpoints reach the store and the figures through here
 * alone; a lint rule holds that.
 */
export { demand, MAY, may, Refused, type Act } from './may';
export * from './bay';
export * from './beside-car';
export * from './jobs';
export * from './figures';
export * from './people';
export * from './gauges';
export * from './files';
export * from './programs';
export * from './answers';
export * from './named-setups';
export * from './readings';
export * from './sheets';
export * from './shop';
export * from './trace';
export * from './trials';
export type * from '@/lib/store/types';
export {
  JOB_SORTS,
  MISS_COST_RANGE,
  OUTCOMES,
  ROLES,
  GAUGE_STATES,
  PROVED_BY,
  VERIFICATION_KINDS,
} from '@/lib/store/types';
export type { ShopFigures, Dated } from '@/lib/refresh';
export type { Viewer } from '@/lib/identity';
