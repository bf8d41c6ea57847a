/**
 * The domain: what is measured, and the measurement file.
 *
 * A browser component that needs only names and shapes imports '@/lib/measure/types', '@/lib/measure/units' or
 * '@/lib/measure/dimension', since the file reader here needs Node.
 */
export * from './types';
export * from './dimension';
export * from './shared-letters';
export * from './deviation';
export * from './trade';
export * from './units';
export { collapse, collapseJobs, spreadOf } from './collapse';
export { faultList, faultSentence, LISTED_FAULTS, type Fault } from './file/fault';
export type {
  FileSource,
  FileSummary,
  KnownDimension,
  KnownSheet,
  MeasurementFile,
  ReadOptions,
} from './file/options';
export { writeText } from './file/escape';
export { MAX_FILE_BYTES } from './file/limits';
export { joinFiles, type JoinedFiles, type NamedReadings } from './file/join';
export { readMeasurementFile, tabulateMeasurementFile, type TabledFile } from './file/read';
export { JobsAhead, type BeingRead, type JobsRead } from './file/table/jobs-ahead';
export type { ReadingTable } from './file/table/reading-table';
export { type SharedLines, sharedLines, SharedReadings } from './file/table/shared-lines';
export { tableOf } from './file/table/table-of';
export { measurementFileLines, writeMeasurementFile } from './file/write';
export { measurementFileText } from './file/write-stream';
