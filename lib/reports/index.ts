export { batchReport } from './batch';
export { batchReportText, reportAround } from './batch-text';
export { batchReportStream, type StoredShop } from './batch-stream';
export type { BatchReport } from './contract';
export { type VerdictText, verdictText } from './verdict-texts';
