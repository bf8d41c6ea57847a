/** The columns that a job is written with, in this order. */
export const JOB_COLUMNS = [
  ...['shopId', 'number', 'sheetId', 'searchText', 'openedAt', 'lastReadAt', 'lastStage', 'lastAttempt'],
  ...['technicianId', 'roundCount', 'setupCount', 'readingCount', 'version'],
];

export const OUTCOME_COUNTS = [
  ...['controlled', 'out', 'frontControlled', 'frontOut', 'centerControlled', 'centerOut'],
  ...['rearControlled', 'rearOut'],
];

export const OUTCOME_COLUMNS = ['shopId', 'jobId', 'jobVersion', ...OUTCOME_COUNTS];

export const ROUND_COLUMNS = [
  'shopId',
  'jobId',
  'stage',
  'attempt',
  'clearance',
  'technicianId',
  'startedAt',
];

export const SETUP_COLUMNS = ['shopId', 'jobId', 'roundId', 'label', 'technicianId', 'gaugeId', 'hungAt'];
