import type { Viewer } from '@/lib/identity';
import { nextDue } from '@/lib/schedule';
import * as reports from '@/lib/store/reports';
import * as tokens from '@/lib/store/tokens';
import type { Json } from '@/lib/store';
import { actorOf } from './actor';
import { demand } from './may';

export { REPORT_EVERY, REPORTS_KEPT, type ReportEvery, type ScheduledReport } from '@/lib/store/reports';
export { TOKEN_SCOPES, type ApiToken, type NewToken, type TokenScope } from '@/lib/store/tokens';

/** A token, and whether it works at present. */
export type ShownToken = tokens.ApiToken & { works: boolean };

/** The tokens that let programs in. @throws Refused */
export async function listTokens(viewer: Viewer, now = Date.now()): Promise<ShownToken[]> {
  demand(viewer, 'change settings');
  const all = await tokens.listTokens(viewer.shop.id);
  return all.map((token) => ({
    ...token,
    works: token.revokedAt === null && (token.expiresAt === null || token.expiresAt > now),
  }));
}

/** A new token, told this once. @throws Refused; RangeError where something is missing or its name is taken. */
export async function makeToken(viewer: Viewer, wanted: tokens.NewToken): Promise<string> {
  demand(viewer, 'change settings');
  return tokens.createToken(viewer.shop.id, wanted, actorOf(viewer));
}

/** @returns false where there is no such token that still works. @throws Refused */
export async function revokeToken(viewer: Viewer, id: number): Promise<boolean> {
  demand(viewer, 'change settings');
  return tokens.revokeToken(viewer.shop.id, id, actorOf(viewer));
}

/** When the report makes itself, next at `next`, and the ones that it made. */
export interface ReportPlan {
  schedule: reports.ReportSchedule | null;
  next: number | null;
  reports: reports.ScheduledReport[];
}

/** @throws Refused */
export async function reportPlan(viewer: Viewer, now = Date.now()): Promise<ReportPlan> {
  demand(viewer, 'change settings');
  const { id, timeZone } = viewer.shop;
  const [schedule, made] = await Promise.all([reports.reportSchedule(id), reports.scheduledReports(id)]);
  return { schedule, next: schedule && nextDue(schedule, timeZone, now), reports: made };
}

/** Null: the report no longer makes itself. @throws Refused */
export async function setReportSchedule(
  viewer: Viewer,
  wanted: Pick<reports.ReportSchedule, 'every' | 'hour'> | null,
): Promise<void> {
  demand(viewer, 'change settings');
  await reports.setReportSchedule(viewer.shop.id, wanted, actorOf(viewer));
}

/** A report that made itself; null where there is none of this id, or it is not done. @throws Refused */
export async function reportMade(
  viewer: Viewer,
  id: number,
): Promise<{ dueAt: number; document: Json } | null> {
  demand(viewer, 'change settings');
  const found = await reports.scheduledReport(viewer.shop.id, id);
  return found === null || found.doneAt === null ? null : found;
}
