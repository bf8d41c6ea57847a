/** Reports that are made by themselves: when, and what came of it; and the verdicts that a report is made of. */
export {
  allReportSchedules,
  REPORT_EVERY,
  reportSchedule,
  setReportSchedule,
  type ReportEvery,
  type ReportSchedule,
} from './schedule';
export {
  BROKEN_OFF_AFTER,
  claimReport,
  failBrokenOff,
  failReport,
  keepReport,
  REPORTS_KEPT,
  scheduledReport,
  scheduledReports,
  type ScheduledReport,
} from './scheduled-reports';
export { verdictsInOrder } from './verdicts-in-order';
