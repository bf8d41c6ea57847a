export { assessRound, type RoundOptions } from './assess-round';
export { type Call, callOf, DEFAULT_MISS_COST } from './call';
export type { UnreadLength } from './checks';
export { whyUndecidable } from './decidable';
