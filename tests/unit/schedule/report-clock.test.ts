import { describe, expect, it, vi } from 'vitest';
import { makeDueReports } from '@/lib/schedule';
import {
  failBrokenOff,
  keepReport,
  REPORTS_KEPT,
  scheduledReport,
  scheduledReports,
  setReportSchedule,
} from '@/lib/store/reports';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();
vi.stubEnv('REHANG_LOG', 'silent');
const actor = { person: null, via: 'command' } as const;
const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const SET = Date.parse('2026-01-15T10:00:00Z');

const make = async (shop: number, id: number) => keepReport(shop, id, { of: id });
const daily = () => setReportSchedule(store.shop, { every: 'day', hour: 6 }, actor, SET);

describe('a report that is made by itself', () => {
  it('is made once when it is due, whichever process looks', async () => {
    await daily();
    expect(await makeDueReports(SET + HOUR, make)).toEqual([]);
    const due = Date.parse('2026-01-16T06:00:00Z');
    const turns = await Promise.all([1, 2, 3].map(() => makeDueReports(due + 30_000, make)));
    expect(turns.flat()).toHaveLength(1);
    expect(await makeDueReports(due + 90_000, make)).toEqual([]);
    const [report] = await scheduledReports(store.shop);
    expect(report).toMatchObject({ dueAt: due, failed: null });
    expect((await scheduledReport(store.shop, report?.id ?? 0))?.document).toEqual({ of: report?.id });
  });

  it('is made once, for the last time, where several were missed', async () => {
    await daily();
    expect(await makeDueReports(SET + 9 * DAY, make)).toHaveLength(1);
    expect(await scheduledReports(store.shop)).toMatchObject([{ dueAt: Date.parse('2026-01-24T06:00:00Z') }]);
  });

  it('is not made again when the clock is set back', async () => {
    await daily();
    await makeDueReports(SET + 5 * DAY, make);
    expect(await makeDueReports(SET + 2 * DAY, make)).toEqual([]);
    expect(await makeDueReports(SET + 6 * DAY, make)).toHaveLength(1);
  });

  it('is kept with those before it, twelve at most', async () => {
    await daily();
    for (let day = 1; day <= REPORTS_KEPT + 3; day++) await makeDueReports(SET + day * DAY, make);
    const reports = await scheduledReports(store.shop);
    expect(reports).toHaveLength(REPORTS_KEPT);
    expect(reports[0]?.dueAt).toBe(Date.parse('2026-01-30T06:00:00Z'));
  });

  it('says why it is absent: its making failed, or was broken off with the program', async () => {
    await daily();
    await makeDueReports(SET + DAY, () => Promise.reject(new Error('the disk is full')));
    expect(await scheduledReports(store.shop)).toMatchObject([
      { doneAt: null, failed: 'The program that makes the report ended before it was done.' },
    ]);
    await makeDueReports(SET + 2 * DAY, () => Promise.resolve());
    expect(await failBrokenOff(SET + 2 * DAY + HOUR / 2)).toBe(0);
    expect(await failBrokenOff(SET + 2 * DAY + 2 * HOUR)).toBe(1);
    expect((await scheduledReports(store.shop))[0]?.failed).toMatch(/was stopped while it made this report/);
  });

  it('is no longer made once its schedule is taken away', async () => {
    await daily();
    await setReportSchedule(store.shop, null, actor, SET + HOUR);
    expect(await makeDueReports(SET + 5 * DAY, make)).toEqual([]);
  });
});
