/** What is said of the running program, to those who run it: log, metrics, and what it is still doing. */
export { LOG_LEVELS, logLevel, makeLog, note, type SignInRefusal } from './log';
export { told, type Told } from './told';
export { takeOverConsole } from './console';
export { countRefresh, countRequest, metricsText, type ShopCounts } from './metrics';
export { isStopping, keepTrack, stopRunning } from './running';
