import { SECTIONS, type Section } from '@/lib/measure';
import { statements } from '@/lib/store/connection/database';
import { ask } from '@/lib/store/sql/ask';
import { inPlace } from '@/lib/store/sql/in-place';
import { insertRows, type Cell } from '@/lib/store/sql/insert-rows';
import { jobIds } from '@/lib/store/sql/job-ids';
import type { Statements } from '@/lib/store/sql/statements';
import { timeZoneOf } from '@/lib/store/shop/time-zone-of';
import { monthOf } from '@/lib/measure/month-of';
import type { JobOutcome, ShopId } from '@/lib/store/types';
import { ofJob } from '@/lib/store/verdicts/rounds-without-verdict';

const COLUMNS = [
  ...['shopId', 'jobId', 'jobVersion', 'right', 'technicianId', 'at', 'month', 'controlled', 'out'],
  ...['frontControlled', 'frontOut', 'centerControlled', 'centerOut', 'rearControlled', 'rearOut'],
];
const UPDATE = `${inPlace('jobId', COLUMNS.slice(2))} WHERE "JobOutcome"."jobVersion" <= excluded."jobVersion"`;

/** A job as it was when its outcome was made: `version` from `jobsWithoutOutcome`. */
export type DatedOutcome = JobOutcome & { version: number };

/** Keeps the rollup of jobs; one made from older readings never replaces one made from newer. */
export async function saveJobOutcomes(shop: ShopId, outcomes: readonly DatedOutcome[]): Promise<void> {
  if (outcomes.length === 0) return;
  await statements(shop, (within) => writeJobOutcomes(within, shop, outcomes));
}

/** The same within a transaction. */
export async function writeJobOutcomes(
  within: Statements,
  shop: ShopId,
  outcomes: readonly DatedOutcome[],
): Promise<void> {
  const timeZone = await timeZoneOf(within, shop);
  const people = await within.$queryRaw<{ id: number; code: string }[]>`
      SELECT "id", "code" FROM "Person" WHERE "shopId" = ${shop}`;
  const codes = new Map(people.map(({ id, code }) => [code, id]));
  const ids = await jobIds(
    within,
    shop,
    outcomes.map(({ job }) => job),
  );
  const rows = outcomes.flatMap((outcome): Cell[][] => {
    const id = ids.get(outcome.job);
    if (id === undefined) return [];
    const { technician } = outcome;
    // Known by another code meanwhile: the job waits for an outcome of its own.
    if (technician !== null && !codes.has(technician)) return [];
    const { version, right, at, controlled, out, sections } = outcome;
    const hand = technician === null ? null : (codes.get(technician) ?? null);
    const time = at === null ? [null, null] : [new Date(at), monthOf(at, timeZone)];
    const counts = SECTIONS.flatMap((section) => counted(sections, section));
    return [[shop, id, version, right, hand, ...time, controlled, out, ...counts]];
  });
  await insertRows(within, 'JobOutcome', COLUMNS, rows, UPDATE);
}

const counted = (sections: JobOutcome['sections'], section: Section): [number, number] => {
  const there = sections[section];
  return there === undefined ? [0, 0] : [there.controlled, there.out];
};

/** Jobs, or this one, whose rollup is absent or older than their readings, with the version of those readings. */
export async function jobsWithoutOutcome(
  shop: ShopId,
  job?: string,
): Promise<{ job: string; version: number }[]> {
  return ask<{ job: string; version: number }>`
    SELECT j."number" AS "job", j."version" FROM "Job" j
      LEFT JOIN "JobOutcome" o ON o."jobId" = j."id" AND o."jobVersion" = j."version"
    WHERE j."shopId" = ${shop} AND o."jobId" IS NULL ${ofJob(job)}`;
}
