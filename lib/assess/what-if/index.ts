/** What if: false alarms, missed damage, re-dos and minutes per 100 jobs under other rules, from the shop's own variances. */
export { bestHalf, usualScenarios, withoutGauge } from './scenarios';
export {
  MEASURES,
  USUAL_MINUTES,
  type Figure,
  type Measure,
  type Minutes,
  type Scenario,
  type WhatIf,
  type WhatIfRow,
  type WorkingGauge,
  type WorkingHand,
  type WorkingShop,
} from './types';
export { whatIf } from './what-if';
export { workingShop, type ShopUsage } from './working-shop';
