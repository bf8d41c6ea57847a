import { transaction } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId, TrialPlace } from '@/lib/store/types';
import { openTrial, requirePlace } from './open-trial';

export interface TrialEntry extends TrialPlace {
  /** As read, mm. */
  value: number;
  /** Code of who read. */
  by: string;
}

/**
 * Keeps one reading of a trial. The same value for the same place once more changes nothing: a form may be sent twice.
 * @throws RangeError where the trial is closed or has no such place, or another value stands there.
 */
export async function enterTrialReading(
  shop: ShopId,
  trial: number,
  { run, repeat, value, by }: TrialEntry,
  actor: Actor,
): Promise<void> {
  await transaction(shop, async (queries) => {
    requirePlace(await openTrial(queries, shop, trial), { run, repeat });
    const where = { trialId_run_repeat: { trialId: trial, run, repeat } };
    const known = await queries.trialReading.findUnique({ where });
    if (known !== null && known.value === value) return;
    if (known !== null)
      throw new RangeError(
        `Run ${run}, reading ${repeat} was entered already, with another value. Correct it, and say why.`,
      );
    const personId = await personRow(queries, shop, by);
    await queries.trialReading.create({
      data: { trialId: trial, shopId: shop, run, repeat, value, personId, at: new Date() },
    });
    await writeTrace(queries, shop, actor, {
      action: 'entered',
      kind: 'trial',
      subject: subjectOf.trialReading(trial, run, repeat),
      concerns: personId,
      after: { value },
    });
  });
}

/**
 * Puts another value in a place that was entered. The trace keeps the earlier one and the reason.
 * @throws RangeError where the trial is closed, nothing was entered there, or no reason is given.
 */
export async function correctTrialReading(
  shop: ShopId,
  trial: number,
  { run, repeat, value, reason }: TrialPlace & { value: number; reason: string },
  actor: Actor,
): Promise<void> {
  await transaction(shop, async (queries) => {
    requirePlace(await openTrial(queries, shop, trial), { run, repeat });
    if (reason.trim() === '') throw new RangeError('Say why: a reading is corrected with a reason only.');
    const where = { trialId_run_repeat: { trialId: trial, run, repeat } };
    const known = await queries.trialReading.findUnique({ where });
    if (known === null)
      throw new RangeError(`Run ${run}, reading ${repeat} was not entered yet: enter it instead.`);
    if (known.value === value) return;
    await queries.trialReading.update({ where, data: { value, at: new Date() } });
    await writeTrace(queries, shop, actor, {
      action: 'corrected',
      kind: 'trial',
      subject: subjectOf.trialReading(trial, run, repeat),
      concerns: known.personId,
      before: { value: known.value },
      after: { value },
      reason: reason.trim(),
    });
  });
}
