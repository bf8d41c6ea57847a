export { batchReport } from './batch';
export { batchReportText, packedReport } from './batch-text';
export { batchReportStream, type StoredShop } from './batch-stream';
export type { BatchReport } from './contract';
export { packed, type VerdictText, verdictText } from './verdict-texts';
