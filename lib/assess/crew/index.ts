/**
 * Works a shop out: on this thread, or on several where it is large. The figures are the same to the last digit.
 * A room of its own: no page may load what starts threads.
 */
export type { Crew } from './crew';
export { learnTogether, passTogether } from './learn-together';
export { Pool } from './pool';
export { numberOf, SameLearned } from './same-learned';
export { threads } from './threads';
export { withCrew, withSoonest } from './with-crew';
