import { transaction, type Queries } from '@/lib/store/connection/database';
import { ask } from '@/lib/store/sql/ask';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, Person, ShopId } from '@/lib/store/types';

/** Everybody, by code. */
export async function listPeople(shop: ShopId): Promise<Person[]> {
  return ask<Person>`SELECT "code", "name", "role", "active" FROM "Person" WHERE "shopId" = ${shop} ORDER BY "code"`;
}

export async function getPerson(shop: ShopId, code: string): Promise<Person | null> {
  const rows = await ask<Person>`
    SELECT "code", "name", "role", "active" FROM "Person" WHERE "shopId" = ${shop} AND "code" = ${code}`;
  return rows[0] ?? null;
}

/** Adds people, or changes those whose code is known. All or nothing. */
export async function savePeople(shop: ShopId, people: readonly Person[], actor: Actor): Promise<void> {
  await transaction(shop, async (queries) => {
    for (const one of people) await savePerson(queries, shop, one, actor);
  });
}

async function savePerson(
  queries: Queries,
  shop: ShopId,
  { code, name, role, active }: Person,
  actor: Actor,
) {
  const where = { shopId_code: { shopId: shop, code } };
  const known = await queries.person.findUnique({ where });
  const after = { role, active };
  if (known === null) {
    const { id } = await queries.person.create({ data: { shopId: shop, code, name, ...after } });
    const what = { kind: 'person', subject: subjectOf.person(id), concerns: id };
    return writeTrace(queries, shop, actor, { action: 'added', ...what, after });
  }
  if (known.removedAt !== null) throw new RangeError(`${code} was removed. Add the person under a new code.`);
  if (known.name === name && known.role === role && known.active === active) return;
  await queries.person.update({ where, data: { name, ...after } });
  await writeTrace(queries, shop, actor, {
    action: 'changed',
    kind: 'person',
    subject: subjectOf.person(known.id),
    concerns: known.id,
    before: { role: known.role, active: known.active },
    // That it changed, never the name: whoever is removed must not be named here for good.
    after: { ...after, ...(known.name !== name && { nameChanged: true }) },
  });
}
