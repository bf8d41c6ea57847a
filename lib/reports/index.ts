export { batchReport } from './batch';
export { batchReportText } from './batch-text';
export { batchReportStream, type StoredShop } from './batch-stream';
export type { BatchReport } from './contract';
export { VerdictTexts } from './verdict-texts';
