import { spawn } from 'node:child_process';
import { isStopping, keepTrack, note } from '@/lib/observe';
import type { ShopId } from '@/lib/store';
import { allReportSchedules, claimReport, failBrokenOff, failReport } from '@/lib/store/reports';
import { dueNow } from './due';

const EVERY = 60_000;

/** Makes one report in a process of its own; resolves when that ends. */
export type Maker = (shop: ShopId, id: number) => Promise<void>;

/**
 * Looks which shops' reports are due and has them made, one after another. Of several processes on one database the
 * one that claims a report first makes it.
 * @returns the ids of the reports that this process had made.
 */
export async function makeDueReports(now: number, make: Maker): Promise<number[]> {
  await failBrokenOff(now);
  const made: number[] = [];
  for (const { shop, timeZone, schedule } of await allReportSchedules()) {
    const due = dueNow(schedule, timeZone, now);
    const id = due === null || isStopping() ? null : await claimReport(shop, due, now);
    if (id === null) continue;
    try {
      await make(shop, id);
      made.push(id);
    } catch (error) {
      note.reportFailed({ shop, report: id }, error);
      await failReport(shop, id, 'The program that makes the report ended before it was done.');
    }
  }
  return made;
}

const held = globalThis as typeof globalThis & {
  rehangReportClock?: NodeJS.Timeout;
  rehangReportTurn?: boolean;
};

/** From now on looks every minute; a look that takes longer is waited for. */
export function startReportClock(): void {
  held.rehangReportClock ??= setInterval(() => void look(), EVERY).unref();
}

export function stopReportClock(): void {
  clearInterval(held.rehangReportClock);
  delete held.rehangReportClock;
}

async function look(): Promise<void> {
  if (held.rehangReportTurn === true) return;
  held.rehangReportTurn = true;
  try {
    await makeDueReports(Date.now(), inOwnProcess);
  } catch (error) {
    note.reportFailed({ shop: 0, report: null }, error);
  } finally {
    held.rehangReportTurn = false;
  }
}

const inOwnProcess: Maker = (shop, id) =>
  new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      ['lib/commands/begin.mjs', 'lib/commands/scheduled-report.ts', String(shop), String(id)],
      { stdio: ['ignore', 'inherit', 'inherit'] },
    );
    keepTrack(child, 'told');
    child.once('error', reject);
    child.once('exit', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`its process ended with ${code ?? 'a signal'}`));
    });
  });
