/**
 * Works a shop out: on this thread, or on several where it is large. The figures are the same to the last digit.
 * A room of its own: no page may load what starts threads.
 */
export { assessShopTogether } from './assess-together';
export type { Crew } from './crew';
export { learnTogether } from './learn-together';
export { threads } from './threads';
export { withCrew } from './with-crew';
