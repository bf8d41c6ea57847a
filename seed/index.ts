/** The demo shop: an invented scenario, generated from a seed number. README.md and stories.md tell about it. */
export { DEMO_SEED, demoShop, demoTruth, type DemoShop } from './demo';
export { demoBayRound, type DemoBayRound } from './bay-round';
export { demoTrials, type DemoTrial } from './trials';
export type { VerifiedGauge } from './gauges';
export type { DemoTruth, HeightTruth, JobTruth, LengthTruth, RoundTruth } from './truth';
export { generateGroup, type GroupBatch, type GroupPlan } from './group';
