/** Whether what was said of heights proved so: what was foretold, reliability, Brier score. */
export { type BrierScore, brierByMonth, brierScore, FEW_ROUNDS } from './brier';
export { type CalledHeights, calledHeights } from './called';
export { CLEAR, type ForetoldHeight, foretoldHeights } from './foretold';
export { type Foretold, provedOnly, roundsOf } from './proved';
export { calibrationError, reliability, type ReliabilityBin } from './reliability';
