import type { Cause } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import { among } from '@/lib/store/sql/among';
import { inChunks } from './in-chunks';
import { observationKey, type KnownObservation, type KnownReading } from './known';

interface ObservationRow {
  setupId: number;
  dimensionId: number;
  side: string;
  cause: Cause | null;
}

interface ReadingRow {
  setupId: number;
  dimensionId: number;
  repeat: number;
  value: number;
  takenAt: Date;
  revision: number;
  excluded: boolean;
}

/** The readings and causes that are stored of these setups. */
export async function readKnownObservations(
  queries: Queries,
  setups: readonly number[],
): Promise<Map<string, KnownObservation>> {
  const history = await readCauses(queries, setups);
  const known = new Map<string, KnownObservation>();
  const observations = await inChunks(
    setups,
    (ids) => queries.$queryRaw<ObservationRow[]>`
      SELECT o."setupId", o."dimensionId", o."cause", d."side"
      FROM "Observation" o JOIN "Dimension" d ON d."id" = o."dimensionId" WHERE o."setupId" ${among(ids)}`,
  );
  for (const { setupId, dimensionId, side, cause } of observations) {
    const causes = history.get(`${setupId} ${side}`) ?? new Set();
    known.set(observationKey(setupId, dimensionId), { cause, causes, readings: new Map() });
  }
  const readings = await inChunks(
    setups,
    (ids) => queries.$queryRaw<ReadingRow[]>`
      SELECT "setupId", "dimensionId", "repeat", "revision", "value", "takenAt", "excluded"
      FROM "Reading" WHERE "setupId" ${among(ids)}`,
  );
  // Revisions come in any order: the first says what was entered, the last what counts.
  const last = new Map<KnownReading, number>();
  for (const { setupId, dimensionId, repeat, revision, value, takenAt, excluded } of readings) {
    const all = known.get(observationKey(setupId, dimensionId))?.readings;
    const reading = all?.get(repeat) ?? { value, takenAt: takenAt.getTime(), counts: null };
    all?.set(repeat, reading);
    if (revision === 1) reading.value = value;
    if (revision <= (last.get(reading) ?? 0)) continue;
    last.set(reading, revision);
    reading.counts = excluded ? null : value;
  }
  return known;
}

async function readCauses(queries: Queries, setups: readonly number[]): Promise<Map<string, Set<Cause>>> {
  const rows = await inChunks(setups, (ids) =>
    queries.recheckOutcome.findMany({
      where: { setupId: { in: ids } },
      select: { setupId: true, side: true, cause: true },
    }),
  );
  const causes = new Map<string, Set<Cause>>();
  for (const { setupId, side, cause } of rows) {
    const key = `${setupId} ${side}`;
    const known = causes.get(key) ?? new Set();
    known.add(cause as Cause);
    causes.set(key, known);
  }
  return causes;
}
