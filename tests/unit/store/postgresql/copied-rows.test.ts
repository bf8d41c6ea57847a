import { expect, it } from 'vitest';
import { database, transaction } from '@/lib/store/connection/database';
import type { RowCell, Rows } from '@/lib/store/sql/rows';
import { freshStore } from '@/tests/unit/store/fresh-store';

const store = freshStore();

/** What the server holds, in its own words, of rows that were copied into a table of all types that such rows have. */
function copied(rows: (of: Rows) => RowCell[][]): Promise<unknown[]> {
  return transaction(store.shop, async (queries, of) => {
    await queries.$executeRawUnsafe(
      'CREATE TEMP TABLE "Copied" ("whole" INTEGER, "mm" DOUBLE PRECISION, "at" TIMESTAMP(3), "is" BOOLEAN, "text" TEXT,' +
        ' "same" INTEGER, "unsaid" INTEGER DEFAULT 5) ON COMMIT DROP',
    );
    const into = of.into('Copied', ['text', 'whole', 'mm', 'at', 'is'], { same: 7 });
    for (const row of rows(of)) into.add(...row);
    await into.flush();
    await of.settled();
    return queries.$queryRaw`
      SELECT "text", "whole"::text, "mm"::text, "at"::text, "is", "same", "unsaid" FROM "Copied" ORDER BY "whole"`;
  });
}

it('rows are copied to a server to the last bit, whatever is in them', async () => {
  const long = 'Zwölf \u{1f527} "\\" '.repeat(20_000);
  const time = (text: string) => Date.parse(text);
  const rows = await copied((of) => [
    ['', -2147483648, -0.1, of.time(time('1969-12-31T23:59:59.999Z')), of.truth(false)],
    [long, 0, 5e-324, of.time(time('2000-01-01T00:00:00.000Z')), of.truth(true)],
    [null, 2147483647, 1.7976931348623157e308, of.time(time('2026-03-02T08:00:00.123Z')), null],
  ]);
  const always = { same: 7, unsaid: 5 };
  expect(rows).toEqual([
    { text: '', whole: '-2147483648', mm: '-0.1', at: '1969-12-31 23:59:59.999', is: false, ...always },
    { text: long, whole: '0', mm: '5e-324', at: '2000-01-01 00:00:00', is: true, ...always },
    {
      ...{ text: null, whole: '2147483647', mm: '1.7976931348623157e+308', at: '2026-03-02 08:00:00.123' },
      ...{ is: null, ...always },
    },
  ]);
});

it.each<[string, RowCell[]]>([
  ['a number that is none', ['a', 1, NaN, 0, true]],
  ['part of a number for a whole one', ['a', 1.5, 1, 0, true]],
  ['a number that is too large', ['a', 2 ** 31, 1, 0, true]],
  ['a text for a number', ['a', 1, '1', 0, true]],
  ['a number for a text', [1, 1, 1, 0, true]],
  ['a text with a zero in it', ['a\0b', 1, 1, 0, true]],
])('%s is not copied, and what comes after is taken again', async (_, row) => {
  await expect(copied(() => [row])).rejects.toThrow(/not to be stored|0x00/);
  expect(await database().setup.count()).toBe(0);
  expect(await copied(() => [['a', 1, 1, 0, true]])).toHaveLength(1);
});

it('a server that refuses a row says why, though others are asked for before it could', async () => {
  const refused = transaction(store.shop, async (queries, rows) => {
    const people = rows.into('Person', ['shopId', 'code', 'name', 'role']);
    people.add(999, 'T1', '', 'technician');
    await people.flush();
    await queries.person.count();
  });
  await expect(refused).rejects.toThrow(/Person_shopId_fkey/);
  expect(await database().person.count()).toBe(0);
});
