/**
 * The one door to the database. Plain domain types in and out; every list is paged or read from rollups, so
 * that no cost grows with the history of readings.
 */
export type * from './types';
export {
  GAUGE_STATES,
  JOB_SORTS,
  MISS_COST_RANGE,
  OUTCOMES,
  PROVED_BY,
  ROLES,
  SHEET_ORIGINS,
  VERIFICATION_KINDS,
} from './types';

export { closeStore } from './connection/database';
export { databaseFailure } from './connection/database-failure';
export { atOneMoment, databaseState } from './connection/state';

export { addShop, getShop, inputsVersion, listShops, saveShop, shopOfId } from './shop/get-shop';
export { getPerson, listPeople, savePeople } from './shop/people';
export { personalExport } from './person-data/personal-export';
export { removePerson } from './person-data/remove-person';
export { getGauge, listGauges, recordVerification, saveGauges } from './shop/gauges';
export { createTrial } from './trials/create-trial';
export { correctTrialReading, enterTrialReading, type TrialEntry } from './trials/enter-reading';
export { closeTrial } from './trials/close-trial';
export { getTrial, listTrials } from './trials/list-trials';
export { TRIAL_LIMITS } from './trials/plan';
export { beginBayRound } from './bay/begin-round';
export { bayStanding, getBayRound } from './bay/get-round';
export { bayEntries } from './bay/kept-entries';
export { listBayRounds } from './bay/list-rounds';
export { OutOfOrder } from './bay/out-of-order';
export { bayRoundsOfJob } from './bay/rounds-of-job';
export { takeBayEntries } from './bay/take-entries';
export { listTrace } from './trace/list-trace';
export { missCosts, setMissCost } from './settings/miss-cost';

export { copySheet, createSheet } from './sheets/create-sheet';
export { correctSheet } from './sheets/correct-sheet';
export { retireSheet } from './sheets/retire-sheet';
export { sheetHistory } from './sheets/sheet-history';
export { getSheet, listSheets, openSheet, sheetBook } from './sheets/sheets';
export { saveSheet } from './sheets/save-sheet';

export { countJobs, getJobRow, listJobs } from './jobs/list-jobs';
export { listSetups } from './jobs/list-setups';
export { newestHanging } from './jobs/newest-hanging';
export { getJob, loadJobs } from './jobs/load-jobs';

export { StoreConflict } from './save/conflicts';
export { saveReadings } from './save/save-readings';
export { saveTable } from './save/save-table';
export { correctReading } from './readings/correct-reading';
export { countExcluded } from './readings/count-excluded';
export { excludeReading, includeReading } from './readings/exclude-reading';
export { readingHistory } from './readings/reading-history';
export { listLoadedFiles } from './readings/list-loaded-files';
export { readingsFor, readingsOfJob, readingsOfSetup } from './readings/readings-for';

export { listRecheckOutcomes, recordOutcome } from './outcomes/record-outcome';
export { countOutcomes } from './outcomes/count-outcomes';
export { jobsWithoutOutcome, saveJobOutcomes } from './outcomes/job-outcomes';

export { currentFit, followFit, saveFit, type FitTexts } from './verdicts/fit';
export { fitAnswer, fitAnswers, fitAnswerTexts, hasFitAnswers } from './verdicts/fit-answers';
export { saveFitAnswers } from './verdicts/save-fit-answers';
export { jobShares } from './shares/job-shares';
export { jobsInOrder } from './shares/jobs-in-order';
export { jobsWithoutShare } from './shares/jobs-without-share';
export { saveJobShares, type NewJobShare } from './shares/save-job-shares';

export { roundsWithoutVerdict } from './verdicts/rounds-without-verdict';
export { saveFigures, type ChangedFigures } from './verdicts/save-figures';
export { saveFollowed, type Followed } from './verdicts/save-followed';
export { saveRoundVerdicts } from './verdicts/save-round-verdicts';
export { heightsFor, verdictsFor } from './verdicts/verdicts-for';

export { provedHeights } from './proofs/proved-heights';
export { roundsWithoutProof } from './proofs/rounds-without-proof';
export { saveRoundProofs } from './proofs/save-round-proofs';
