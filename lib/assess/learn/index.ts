export { learn, learning, type LearnOptions } from './learn';
export { type Pass, partsOfPass, sumOfParts, tallyPart } from './pass';
export type { Tally } from './tally';
