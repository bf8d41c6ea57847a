/** Whether the database is well, and how much it holds: for health and metrics. */
export { databaseReady } from './ready';
export { loadedSoFar } from './counts';
