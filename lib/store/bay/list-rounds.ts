import type { Stage } from '@/lib/measure';
import { ask } from '@/lib/store/sql/ask';
import type { BayRoundRow, ShopId } from '@/lib/store/types';

/** Rounds that are shown at once: those begun last. */
const MOST = 200;
const DAY = 86_400_000;
/** How long a finished round stays in the list, ms. */
const SHOWN_FOR = 7 * DAY;

interface Row {
  id: number;
  job: string;
  stage: Stage;
  attempt: number;
  startedAt: Date;
  finishedAt: Date | null;
  sheet: string | null;
  by: string;
  /** What is worked out comes as the database keeps it. */
  lastEntryAt: Date | number | bigint | null;
  readings: number | bigint;
  tookPart: boolean | number | bigint;
}

/** Rounds beside the car that are open, and those finished in the last days; those begun last come first. */
export async function listBayRounds(shop: ShopId, code: string, now = Date.now()): Promise<BayRoundRow[]> {
  const rows = await ask<Row>`
    SELECT b."id", b."job", b."stage", b."attempt", b."startedAt", b."finishedAt", h."name" AS "sheet",
      p."code" AS "by",
      (SELECT max(e."receivedAt") FROM "BayEntry" e WHERE e."bayRoundId" = b."id") AS "lastEntryAt",
      (SELECT count(*) FROM "BayEntry" e
        WHERE e."bayRoundId" = b."id" AND e."kind" = 'read' AND e."conflict" IS NULL) AS "readings",
      EXISTS (SELECT 1 FROM "BayEntry" e JOIN "Person" m ON m."id" = e."personId"
        WHERE e."bayRoundId" = b."id" AND m."code" = ${code}) AS "tookPart"
    FROM "BayRound" b JOIN "Sheet" h ON h."id" = b."sheetId" JOIN "Person" p ON p."id" = b."personId"
    WHERE b."shopId" = ${shop} AND (b."finishedAt" IS NULL OR b."finishedAt" >= ${new Date(now - SHOWN_FOR)})
    ORDER BY b."startedAt" DESC, b."id" DESC LIMIT ${MOST}`;
  return rows.map(({ sheet, startedAt, finishedAt, lastEntryAt, readings, tookPart, ...row }) => ({
    ...row,
    sheet: sheet ?? '',
    startedAt: startedAt.getTime(),
    finishedAt: finishedAt?.getTime() ?? null,
    lastEntryAt: timeOf(lastEntryAt),
    readings: Number(readings),
    mine: row.by === code || Boolean(tookPart),
  }));
}

const timeOf = (time: Row['lastEntryAt']): number | null =>
  time instanceof Date ? time.getTime() : time === null ? null : Number(time);
