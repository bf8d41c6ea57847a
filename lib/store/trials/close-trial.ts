import { transaction } from '@/lib/store/connection/database';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId } from '@/lib/store/types';
import { openTrial } from './open-trial';

/** Ends the entering of readings, all of them in or not. @throws RangeError where there is no such trial, or it is closed. */
export async function closeTrial(shop: ShopId, trial: number, actor: Actor): Promise<void> {
  await transaction(shop, async (queries) => {
    await openTrial(queries, shop, trial);
    await queries.trial.update({
      where: { shopId_id: { shopId: shop, id: trial } },
      data: { closedAt: new Date() },
    });
    const entered = await queries.trialReading.count({ where: { shopId: shop, trialId: trial } });
    await writeTrace(queries, shop, actor, {
      action: 'closed',
      kind: 'trial',
      subject: subjectOf.trial(trial),
      after: { entered },
    });
  });
}
