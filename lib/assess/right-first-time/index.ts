export { firstTimeOutcome, firstTimeOutcomes, type CountedOutcome, type FirstTimeOutcome } from './outcome';
export { rateOf, type ShrunkRate } from './rate';
export { rateByMonth, rateBySection, rateBySheet, rateByTechnician } from './by';
