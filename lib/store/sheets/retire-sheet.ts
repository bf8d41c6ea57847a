import { transaction } from '@/lib/store/connection/database';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId } from '@/lib/store/types';

/**
 * Takes a sheet out of what is offered for new rounds, or takes it back. What was measured by it stays as it is.
 * @throws RangeError where there is no such sheet, or it stands so already.
 */
export async function retireSheet(shop: ShopId, name: string, retired: boolean, actor: Actor): Promise<void> {
  await transaction(shop, async (queries) => {
    const where = { shopId_name: { shopId: shop, name } };
    const known = await queries.sheet.findUnique({ where, select: { retiredAt: true } });
    if (known === null) throw new RangeError(`The shop has no sheet ${name}.`);
    if ((known.retiredAt !== null) === retired)
      throw new RangeError(
        retired ? `Sheet ${name} is retired already.` : `Sheet ${name} is in use already.`,
      );
    await queries.sheet.update({ where, data: { retiredAt: retired ? new Date() : null } });
    await writeTrace(queries, shop, actor, {
      action: retired ? 'retired' : 'taken back',
      kind: 'sheet',
      subject: subjectOf.sheet(name),
      before: { retired: !retired },
      after: { retired },
    });
  });
}
