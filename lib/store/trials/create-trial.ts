import { transaction } from '@/lib/store/connection/database';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId, TrialPlan } from '@/lib/store/types';
import { checkedPlan } from './plan';

const LONGEST_NAME = 80;

/**
 * Keeps a planned trial. What is measured by whom, when, follows from the plan alone and is never changed after.
 * @returns its number.
 * @throws RangeError where the plan is none, the name is taken, or somebody in it does not work in the shop.
 */
export function createTrial(
  shop: ShopId,
  { name: given, plan: asGiven }: { name: string; plan: TrialPlan },
  actor: Actor,
): Promise<number> {
  return transaction(shop, async (queries) => {
    const name = given.trim();
    if (name === '' || name.length > LONGEST_NAME)
      throw new RangeError(`A trial needs a name of at most ${LONGEST_NAME} characters.`);
    const plan = checkedPlan(asGiven);
    const taken = await queries.trial.findUnique({ where: { shopId_name: { shopId: shop, name } } });
    if (taken !== null) throw new RangeError(`There is a trial ${name} already: give this one another name.`);
    const people = await queries.person.findMany({
      where: { shopId: shop, code: { in: plan.people }, active: true },
      select: { code: true },
    });
    const missing = plan.people.find((code) => !people.some((one) => one.code === code));
    if (missing !== undefined)
      throw new RangeError(`Nobody with the code ${missing} works in this shop: take ${missing} out.`);
    const { id } = await queries.trial.create({
      data: {
        shopId: shop,
        name,
        plan: { ...plan, points: plan.points.map((one) => ({ ...one })) },
        createdAt: new Date(),
      },
    });
    const { points, people: codes, setups, readings, asked } = plan;
    await writeTrace(queries, shop, actor, {
      action: 'planned',
      kind: 'trial',
      subject: subjectOf.trial(id),
      // Of the people their number alone: a trace names nobody.
      after: {
        question: asked.question,
        points: points.map((one) => one.name),
        people: codes.length,
        setups,
        readings,
      },
    });
    return id;
  });
}
