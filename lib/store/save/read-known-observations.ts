import type { Cause } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import { among } from '@/lib/store/sql/among';
import { inChunks } from './in-chunks';
import { observationKey, type KnownObservation } from './known';

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
      SELECT "setupId", "dimensionId", "repeat", "value", "takenAt" FROM "Reading" WHERE "setupId" ${among(ids)}`,
  );
  for (const { setupId, dimensionId, repeat, value, takenAt } of readings) {
    const observation = known.get(observationKey(setupId, dimensionId));
    observation?.readings.set(repeat, { value, takenAt: takenAt.getTime() });
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
