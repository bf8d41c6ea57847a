/** The batch report of a shop from what is stored: on demand, and by itself. */
export { dueNow, lastDue, nextDue } from './due';
export { makeReport } from './make-report';
export { makeDueReports, startReportClock, stopReportClock, type Maker } from './report-clock';
export { storedReport } from './stored-report';
