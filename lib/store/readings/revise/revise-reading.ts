import { transaction, type Queries } from '@/lib/store/connection/database';
import { collapseOne, meanRead } from '@/lib/store/save/collapse-one';
import { personRow } from '@/lib/store/shop/person-row';
import { roundChanged } from '@/lib/store/shop/round-changed';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ReadingPlace, ShopId } from '@/lib/store/types';
import { findObservation, type FoundObservation } from './find-observation';
import { withoutReadings } from './without-readings';

export interface Standing {
  value: number;
  excluded: boolean;
}

export interface Revision {
  action: 'corrected' | 'excluded' | 'included';
  reason: string;
  /** How the reading is to stand from now on. @throws RangeError where that would change nothing. */
  from: (standing: Standing, name: string) => Standing;
}

/**
 * Adds a revision to one reading, and makes everything that hangs on its value again, all or nothing: the
 * collapsed form as if a file had held the readings as they stand now, versions, trace.
 * @throws RangeError where there is no such reading or person, no reason, or nothing would change.
 */
export async function reviseReading(
  shop: ShopId,
  wanted: ReadingPlace,
  revision: Revision,
  actor: Actor,
): Promise<void> {
  await transaction(shop, (queries) => reviseWithin(queries, shop, wanted, revision, actor));
}

/** The same within a transaction that is open already. */
export async function reviseWithin(
  queries: Queries,
  shop: ShopId,
  wanted: ReadingPlace,
  { action, reason: told, from }: Revision,
  actor: Actor,
): Promise<void> {
  const reason = told.trim();
  if (reason === '') throw new RangeError('Say why: a reading is changed with a reason only.');
  const { person } = actor;
  if (person === null) throw new RangeError('Say who: a reading is changed in the name of a person only.');
  const personId = await personRow(queries, shop, person);
  const found = await findObservation(queries, shop, wanted);
  const { setup, readings } = found;
  const last = readings.filter(({ repeat }) => repeat === wanted.repeat).at(-1);
  const name = `Reading ${wanted.repeat} of ${found.name} in setup ${wanted.setup} of job ${wanted.job}`;
  if (last === undefined) throw new RangeError(`There is no ${name.replace('R', 'r')}.`);
  const before = { value: last.value, excluded: last.excluded };
  const after = from(before, name);
  const row = { ...last, ...after, revision: last.revision + 1, reason };
  await queries.reading.create({ data: { ...row, shopId: shop, personId, enteredAt: new Date() } });
  await collapseAgain(queries, found, row);
  await roundChanged(queries, shop, setup);
  await withoutReadings(queries, setup);
  await writeTrace(queries, shop, actor, {
    action,
    kind: 'reading',
    subject: subjectOf.reading(wanted.job, wanted.setup, found.name, wanted.repeat),
    concerns: setup.technicianId,
    before: { ...before },
    after: { ...after },
    reason,
  });
}

type Row = FoundObservation['readings'][number];

async function collapseAgain(
  queries: Queries,
  { setup: { setupId }, dimensionId, readings, place }: FoundObservation,
  added: Row,
): Promise<void> {
  const standing = new Map([...readings, added].map((row) => [row.repeat, row]));
  const counting = [...standing.values()].filter(({ excluded }) => !excluded);
  const form = collapseOne(
    place,
    counting.map(({ repeat, value, takenAt }) => ({ repeat, value, takenAt: takenAt.getTime() })),
  );
  await queries.observation.update({
    where: { setupId_dimensionId: { setupId, dimensionId } },
    data: {
      n: counting.length,
      excluded: standing.size - counting.length,
      // Without a reading that counts there is no mean; what stood there is left, and nobody reads it.
      ss: form?.ss ?? 0,
      ...(form !== null && {
        mean: meanRead(form, place.clearance),
        deviation: form.deviation,
        takenAt: new Date(form.takenAt),
      }),
    },
  });
}
