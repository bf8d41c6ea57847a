import type { Queries } from '@/lib/store/connection/database';
import { insertRows, type Cell } from '@/lib/store/sql/insert-rows';
import { storedSide } from '@/lib/store/sql/side';
import type { ShopId } from '@/lib/store/types';
import { gains, type Batch, type BatchSetup } from './batch';
import { meanRead } from './collapse-one';
import { collapsed } from './collapsed';
import type { Ids } from './write-parents';

const OBSERVATION_COLUMNS = ['setupId', 'dimensionId', 'n', 'mean', 'deviation', 'ss', 'takenAt', 'cause'];
const OBSERVATION_UPDATE = `("setupId", "dimensionId") DO UPDATE SET ${[
  'n',
  'mean',
  'deviation',
  'ss',
  'takenAt',
  'cause',
]
  .map((column) => `"${column}" = excluded."${column}"`)
  .join(', ')}`;
const READING_COLUMNS = [
  ...['setupId', 'dimensionId', 'repeat', 'value', 'takenAt', 'fileId', 'line'],
  ...['shopId', 'personId', 'enteredAt'],
];
const RECHECK_COLUMNS = ['shopId', 'setupId', 'side', 'cause', 'at'];

/** Where readings come from: the lines of a file, or somebody who entered them by hand. */
export type Origin = { fileId: number } | { personId: number; enteredAt: Date };

/** Stores the new readings, the collapsed form of every observation they touch, and the causes they state. */
export async function writeObservations(
  queries: Queries,
  shop: ShopId,
  setups: ReadonlyMap<BatchSetup, number>,
  batch: Batch,
  ids: Ids,
  origin: Origin,
): Promise<{ causes: number }> {
  const forms = collapsed(batch);
  const observations: Cell[][] = [];
  const readings: Cell[][] = [];
  const rechecks = new Map<string, Cell[]>();
  for (const job of batch.jobs.values()) {
    for (const setup of job.setups.values()) {
      const setupId = setups.get(setup);
      if (setupId === undefined) continue;
      for (const [key, observation] of setup.observations) {
        if (!gains(observation)) continue;
        const dimensionId = ids.dimensions.get(job.sheet)?.get(key) ?? null;
        const form = forms.get(observation);
        const { cause } = observation;
        if (form !== undefined) {
          const { n, deviation, ss, takenAt } = form;
          const mean = meanRead(form, setup.round.clearance);
          observations.push([setupId, dimensionId, n, mean, deviation, ss, new Date(takenAt), cause]);
        } else if (dimensionId !== null) {
          // Every reading of it is excluded: the cause alone is new.
          await queries.observation.update({
            where: { setupId_dimensionId: { setupId, dimensionId } },
            data: { cause },
          });
        }
        for (const { repeat, value, takenAt: at, line } of observation.added) {
          readings.push([
            ...[setupId, dimensionId, repeat, value, new Date(at)],
            ...('fileId' in origin
              ? [origin.fileId, line, null, null, null]
              : [null, null, shop, origin.personId, origin.enteredAt]),
          ]);
        }
        if (!observation.newCause) continue;
        const side = storedSide(observation.dimension.stated.side);
        const first = Math.min(...[...observation.readings.values()].map(({ takenAt }) => takenAt));
        rechecks.set(`${setupId} ${side}`, [shop, setupId, side, cause, new Date(first)]);
      }
    }
  }
  await insertRows(queries, 'Observation', OBSERVATION_COLUMNS, observations, OBSERVATION_UPDATE);
  await insertRows(queries, 'Reading', READING_COLUMNS, readings);
  await insertRows(queries, 'RecheckOutcome', RECHECK_COLUMNS, [...rechecks.values()]);
  return { causes: rechecks.size };
}
