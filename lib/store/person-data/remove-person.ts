import { randomInt } from 'node:crypto';
import { transaction, type Queries } from '@/lib/store/connection/database';
import { inputsChanged } from '@/lib/store/shop/get-shop';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, ShopId } from '@/lib/store/types';
import { renameInDocuments } from './rename-in-documents';
import { renameInTexts } from './rename-in-texts';
import { textWithout } from './without-person';

/**
 * Removes a person: the row stays under a pseudonym that nothing leads back from, without name, account, sessions
 * and invitations, and with it the shop's numbers. Code and name leave every table, also where others wrote them
 * in notes, reasons and names of files, as words of their own (a code of one sign stays in sentences). Fits and
 * verdicts are let go: the next refresh makes them again.
 *
 * A file that names the old code makes a new person, where it brings new setups; of setups that are stored it is
 * refused, since they are somebody else's by then. Backups made before still hold the names.
 * @returns the pseudonym, the person's code from now on.
 * @throws RangeError where there is no such person, no reason, or nobody would be left to manage the shop.
 */
export function removePerson(shop: ShopId, code: string, reason: string, actor: Actor): Promise<string> {
  return transaction(shop, async (queries) => {
    if (reason.trim() === '') throw new RangeError('Say why: a person is removed with a reason only.');
    const person = await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code } } });
    if (person === null) throw new RangeError(`The shop has nobody with the code ${code}.`);
    const { id, name, role, active, removedAt } = person;
    if (removedAt !== null) throw new RangeError(`${code} was removed already.`);
    await keepManager(queries, shop, id);
    const renaming = { code, name, pseudonym: await newPseudonym(queries, shop) };
    await inputsChanged(queries, shop);
    const { inputsVersion } = await queries.shop.findUniqueOrThrow({
      where: { id: shop },
      select: { inputsVersion: true },
    });
    // Before the code goes: it may be the actor's own.
    await writeTrace(queries, shop, actor, {
      action: 'removed',
      kind: 'person',
      subject: subjectOf.person(id),
      concerns: id,
      before: { role, active },
      after: { active: false, inputsVersion },
      reason: textWithout(reason.trim(), renaming),
    });
    await withoutAccount(queries, shop, id);
    await renameInDocuments(queries, shop, renaming);
    await renameInTexts(queries, shop, renaming);
    await queries.person.update({
      where: { id },
      data: { code: renaming.pseudonym, name: '', active: false, removedAt: new Date() },
    });
    return renaming.pseudonym;
  });
}

async function keepManager(queries: Queries, shop: ShopId, removed: number): Promise<void> {
  const managers = await queries.person.findMany({
    where: { shopId: shop, role: 'manager', active: true },
    select: { id: true },
  });
  if (managers.length === 1 && managers[0]?.id === removed)
    throw new RangeError('Nobody would be left to manage the shop. Make somebody else a manager first.');
}

async function withoutAccount(queries: Queries, shopId: number, personId: number): Promise<void> {
  await queries.invitation.deleteMany({ where: { shopId, personId } });
  const user = await queries.user.findUnique({ where: { shopId_personId: { shopId, personId } } });
  if (user === null) return;
  await queries.verification.deleteMany({
    where: { OR: [{ value: { contains: user.id } }, { identifier: { contains: user.id } }] },
  });
  // Sessions, accounts and second factors go with it.
  await queries.user.delete({ where: { id: user.id } });
}

async function newPseudonym(queries: Queries, shop: ShopId): Promise<string> {
  for (;;) {
    const code = `former-${randomInt(10_000, 100_000)}`;
    const taken = await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code } } });
    if (taken === null) return code;
  }
}
