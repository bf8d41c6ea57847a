import type { z } from 'zod';
import { storedReport } from '@/lib/schedule';
import { scheduledReport, scheduledReports, type ScheduledReport } from '@/lib/store/reports';
import type { TokenHolder } from '@/lib/store/tokens';
import { byteStream } from './bytes';
import { json, problem } from './problem';
import type * as schemas from './schemas/answers';

/** Figures come within a minute or so of the first load. */
const LATER = { headers: { 'Retry-After': '30' } };

/** The batch report from what is stored now. */
export async function reportNow({ shop }: TokenHolder): Promise<Response> {
  const pieces = await storedReport(shop.id);
  if (pieces === null)
    return problem(
      503,
      'There are no figures yet: load measurements, or wait until they are worked out.',
      LATER,
    );
  return new Response(byteStream(pieces), {
    headers: { 'Content-Type': 'application/json', 'Cache-Control': 'no-store' },
  });
}

export async function listReports({ shop }: TokenHolder): Promise<Response> {
  const body: z.infer<typeof schemas.scheduledReports> = {
    reports: (await scheduledReports(shop.id)).map(plain),
  };
  return json(body);
}

/** The document of one scheduled report. */
export async function reportOf({ shop }: TokenHolder, id: string): Promise<Response> {
  const found = /^\d{1,9}$/.test(id) ? await scheduledReport(shop.id, Number(id)) : null;
  if (found === null)
    return problem(404, 'This shop keeps no report of this id. /api/v1/reports lists them.');
  if (found.failed !== null) return problem(404, found.failed);
  if (found.doneAt === null) return problem(503, 'This report is being made.', LATER);
  return json(found.document);
}

const iso = (time: number) => new Date(time).toISOString();

const plain = ({ id, dueAt, startedAt, doneAt, failed }: ScheduledReport) => ({
  id,
  due_at: iso(dueAt),
  started_at: iso(startedAt),
  done_at: doneAt === null ? null : iso(doneAt),
  failed,
});
