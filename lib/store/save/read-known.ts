import { dimensionKey, type GaugeKind, type Reading, type Stage } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import { dimensionColumns, dimensionOf } from '@/lib/store/sheets/dimension-row';
import type { ShopId } from '@/lib/store/types';
import { inChunks } from './in-chunks';
import { roundKey, type Known, type KnownJob, type KnownRound, type KnownSheet } from './known';
import { readKnownObservations } from './read-known-observations';

/** Reads what the store holds of everything that the readings name, and nothing else. */
export async function readKnown(
  queries: Queries,
  shop: ShopId,
  readings: readonly Reading[],
): Promise<Known> {
  const people = await queries.person.findMany({ where: { shopId: shop }, select: { id: true, code: true } });
  const gauges = await queries.gauge.findMany({
    where: { shopId: shop },
    select: { id: true, tag: true, kind: true },
  });
  const jobRows = await readJobs(
    queries,
    shop,
    distinct(readings, (r) => r.job),
  );
  const named = distinct(readings, (r) => r.sheet).filter((name) => name !== null);
  const sheets = await readSheets(queries, shop, named, [...new Set(jobRows.map((row) => row.sheetId))]);
  const codes = new Map(people.map(({ id, code }) => [id, code]));
  const tags = new Map(gauges.map(({ id, tag }) => [id, tag]));
  const jobs = knownJobs(jobRows, new Map(sheets.map((sheet) => [sheet.id, sheet])));
  await readSetups(queries, jobs, codes, tags);
  return {
    people: new Map(people.map(({ code, id }) => [code, id])),
    gauges: new Map(gauges.map(({ tag, id, kind }) => [tag, { id, kind: kind as GaugeKind | null }])),
    sheets: new Map(sheets.flatMap((sheet) => (sheet.name === null ? [] : [[sheet.name, sheet]]))),
    jobs,
    observations: await readKnownObservations(queries, touchedSetups(readings, jobs)),
  };
}

type JobRow = Awaited<ReturnType<typeof readJobs>>[number];

function readJobs(queries: Queries, shop: ShopId, numbers: readonly string[]) {
  return inChunks(numbers, (chunk) =>
    queries.job.findMany({
      where: { shopId: shop, number: { in: chunk } },
      select: {
        id: true,
        number: true,
        sheetId: true,
        openedAt: true,
        lastReadAt: true,
        readingCount: true,
        version: true,
      },
    }),
  );
}

async function readSheets(
  queries: Queries,
  shop: ShopId,
  names: readonly string[],
  ids: readonly number[],
): Promise<KnownSheet[]> {
  const select = { id: true, name: true, dimensions: { select: { id: true, ...dimensionColumns } } } as const;
  const byName = await inChunks(names, (name) =>
    queries.sheet.findMany({ where: { shopId: shop, name: { in: name } }, select }),
  );
  const byId = await inChunks(ids, (id) => queries.sheet.findMany({ where: { id: { in: id } }, select }));
  return [...byName, ...byId].map(({ id, name, dimensions }) => ({
    id,
    name,
    dimensions: new Map(
      dimensions.map((row) => {
        const dimension = { ...dimensionOf(row), id: row.id };
        return [dimensionKey(dimension), dimension];
      }),
    ),
  }));
}

function knownJobs(rows: readonly JobRow[], sheets: ReadonlyMap<number, KnownSheet>): Map<string, KnownJob> {
  const jobs = new Map<string, KnownJob>();
  for (const { id, number, sheetId, openedAt, lastReadAt, readingCount, version } of rows) {
    const sheet = sheets.get(sheetId);
    if (sheet === undefined) throw new Error(`Job ${number} refers to no sheet.`);
    jobs.set(number, {
      id,
      sheet,
      openedAt: openedAt.getTime(),
      lastReadAt: lastReadAt.getTime(),
      readings: readingCount,
      version,
      rounds: new Map(),
      setups: new Map(),
    });
  }
  return jobs;
}

/** Puts the rounds and setups that are stored into their jobs. */
async function readSetups(
  queries: Queries,
  jobs: ReadonlyMap<string, KnownJob>,
  codes: ReadonlyMap<number, string>,
  tags: ReadonlyMap<number, string>,
): Promise<void> {
  const byId = new Map([...jobs.values()].map((job) => [job.id, job]));
  const ids = [...byId.keys()];
  const rounds = new Map<number, KnownRound>();
  for (const row of await inChunks(ids, (id) => queries.round.findMany({ where: { jobId: { in: id } } }))) {
    const { id, attempt, clearance } = row;
    const stage = row.stage as Stage;
    const round = { id, stage, attempt, clearance, startedAt: row.startedAt.getTime() };
    rounds.set(id, round);
    byId.get(row.jobId)?.rounds.set(roundKey(stage, attempt), round);
  }
  for (const row of await inChunks(ids, (id) => queries.setup.findMany({ where: { jobId: { in: id } } }))) {
    const round = rounds.get(row.roundId);
    if (round === undefined) continue;
    byId.get(row.jobId)?.setups.set(row.label, {
      id: row.id,
      round,
      technician: codes.get(row.technicianId) ?? '',
      gauge: tags.get(row.gaugeId) ?? '',
      hungAt: row.hungAt.getTime(),
    });
  }
}

function touchedSetups(readings: readonly Reading[], jobs: ReadonlyMap<string, KnownJob>): number[] {
  const ids = new Set<number>();
  for (const { job, setup } of readings) {
    const known = jobs.get(job)?.setups.get(setup);
    if (known !== undefined) ids.add(known.id);
  }
  return [...ids];
}

function distinct<T>(readings: readonly Reading[], of: (reading: Reading) => T): T[] {
  return [...new Set(readings.map(of))];
}
