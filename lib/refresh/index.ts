/** Keeps what the pages read (rollups, fit, verdicts) up to date with what is stored, and hands it out typed. */
export { followNow } from './follow-now';
export { refreshAfterPause } from './refresh-after-pause';
export { refreshSoon } from './refresh-soon';
export { currentFigures, currentLearned, roundVerdicts, type Dated } from './current';
export { currentAnswer, currentCharts, currentHand, currentMonths, currentRateJobs } from './current-answer';
export type { ShopFigures } from './figures';
