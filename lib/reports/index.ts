export { batchReport } from './batch';
export { batchReportText } from './batch-text';
export type { BatchReport } from './contract';
