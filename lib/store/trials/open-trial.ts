import type { Queries } from '@/lib/store/connection/database';
import type { ShopId, TrialPlace, TrialPlan } from '@/lib/store/types';
import { checkedPlan, plannedRuns } from './plan';

/** @throws RangeError where the shop has no such trial, or it is closed. */
export async function openTrial(queries: Queries, shop: ShopId, id: number): Promise<TrialPlan> {
  const row = await queries.trial.findUnique({ where: { shopId_id: { shopId: shop, id } } });
  if (row === null) throw new RangeError(`The shop has no trial ${id}.`);
  if (row.closedAt !== null)
    throw new RangeError(`The trial ${row.name} is closed: nothing is entered any more.`);
  return checkedPlan(row.plan);
}

/** @throws RangeError for a place that the plan does not have. */
export function requirePlace(plan: TrialPlan, { run, repeat }: TrialPlace): void {
  const runs = plannedRuns(plan);
  if (!(Number.isInteger(run) && run >= 1 && run <= runs))
    throw new RangeError(`The run sheet has runs 1 to ${runs}, not ${run}.`);
  if (!(Number.isInteger(repeat) && repeat >= 1 && repeat <= plan.readings))
    throw new RangeError(`A hanging of this trial has readings 1 to ${plan.readings}, not ${repeat}.`);
}
