export { learn, learning, learningFrom, type LearnOptions } from './learn';
export { type Pass, partsOfPass, sumOfParts, tallyPart } from './pass';
export { type Survey, type SurveyedJobs, surveyJobs, surveyOf } from './survey';
export type { Tally } from './tally';
