import { dimensionName, type Dimension } from '@/lib/measure';
import {
  amended,
  checkRows,
  isFault,
  matchDimensions,
  rowsOf,
  sheetChanges,
  type SheetChange,
  type SheetPoint,
} from '@/lib/measure/sheet';
import { transaction, type Queries } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import { storedSide } from '@/lib/store/sql/side';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, Json, SheetCorrected, SheetCorrection, ShopId } from '@/lib/store/types';
import { addDimension } from './add-dimension';
import { contentColumns, contentOf } from './content-row';
import { dimensionColumns, dimensionOf, namedValue } from './dimension-row';
import { readAgain } from './read-again';
import { revisionDocument } from './revision-document';
import { isSameContent, lastRevision, writeRevision } from './write-revision';

/**
 * Corrects a sheet, all or nothing: the whole sheet is kept as a new revision with the reason; of dimensions with
 * readings the deviations are worked out anew as if the sheet had said so from the start, and everything made from
 * them is out of date; the trace tells from what to what. Where a measurement file has brought or added to the sheet
 * since its last revision, that state is kept as a revision first.
 * @throws RangeError where there is no such sheet or person, no reason, nothing changes, the sheet has a fault, another
 * revision stands by now, or a dimension with readings would be taken out.
 */
export async function correctSheet(
  shop: ShopId,
  name: string,
  { revision: corrected, reason: told, points, dimensions }: SheetCorrection,
  actor: Actor,
): Promise<SheetCorrected> {
  const reason = told.trim();
  if (reason === '') throw new RangeError('Say why: a sheet is corrected with a reason only.');
  const { person } = actor;
  if (person === null) throw new RangeError('Say who: a sheet is corrected in the name of a person only.');
  return transaction(shop, async (queries) => {
    const personId = await personRow(queries, shop, person);
    const sheet = await queries.sheet.findUnique({
      where: { shopId_name: { shopId: shop, name } },
      select: { id: true, revision: true, ...contentColumns },
    });
    if (sheet === null) throw new RangeError(`The shop has no sheet ${name}.`);
    if (sheet.revision !== corrected)
      throw new RangeError(
        `Sheet ${name} was corrected meanwhile: it stands at revision ${sheet.revision}. Look at it, and correct that one.`,
      );
    const before = contentOf(sheet);
    const after = amended(before, { points, dimensions });
    const changes = sheetChanges(before, after);
    if (changes.length === 0) throw new RangeError(`Sheet ${name} stands so already.`);
    if (checkRows(rowsOf(after)).some(isFault))
      throw new RangeError('The sheet has faults: check it, and mend what is named.');
    const { id: sheetId } = sheet;
    await writePoints(queries, sheetId, after.points);
    const touched = await writeDimensions(queries, sheetId, after.dimensions);
    const again = await readAgain(queries, shop, touched);

    const last = await lastRevision(queries, sheetId);
    const asFound = last === null || !isSameContent(last, before);
    // Revision 1 is the state before any correction; later ones follow.
    const found = last === null ? sheet.revision : sheet.revision + 1;
    const revision = asFound ? found + 1 : sheet.revision + 1;
    const by = { sheetId, personId };
    if (asFound) {
      const document = revisionDocument(before, 'found');
      await writeRevision(queries, shop, { ...by, revision: found, document, reason: null });
    }
    const document = revisionDocument(after, 'corrected');
    await writeRevision(queries, shop, { ...by, revision, document, reason });
    await queries.sheet.update({ where: { id: sheetId }, data: { revision } });
    await writeTrace(queries, shop, actor, {
      action: 'corrected',
      kind: 'sheet',
      subject: subjectOf.sheet(name),
      before: valuesOf(changes, 'from'),
      after: valuesOf(changes, 'to'),
      reason,
    });
    return { revision, changes, ...again };
  });
}

/** `{ 'height K L nominal': 250 }` */
const valuesOf = (changes: readonly SheetChange[], which: 'from' | 'to'): Record<string, Json> =>
  Object.fromEntries(
    changes.map((change) => [
      [change.what === 'point' ? 'point' : '', change.of, change.field === 'itself' ? '' : change.field]
        .filter((part) => part !== '')
        .join(' '),
      change[which],
    ]),
  );

async function writePoints(queries: Queries, sheetId: number, points: readonly SheetPoint[]): Promise<void> {
  const known = await queries.sheetPoint.findMany({ where: { sheetId } });
  const key = (letter: string, side: string) => `${letter} ${side}`;
  const wanted = new Set(points.map(({ letter, side }) => key(letter, storedSide(side))));
  const gone = known.filter(({ letter, side }) => !wanted.has(key(letter, side)));
  await queries.sheetPoint.deleteMany({ where: { id: { in: gone.map(({ id }) => id) } } });
  for (const { letter, side: of, ...rest } of points) {
    const side = storedSide(of);
    await queries.sheetPoint.upsert({
      where: { sheetId_letter_side: { sheetId, letter, side } },
      create: { sheetId, letter, side, ...rest },
      update: rest,
    });
  }
}

type Known = Dimension & { id: number };

/** @returns dimensions that were there and are another now, by row, and of which the sheet's value is. */
async function writeDimensions(
  queries: Queries,
  sheetId: number,
  dimensions: readonly Dimension[],
): Promise<number[]> {
  const rows = await queries.dimension.findMany({
    where: { sheetId },
    select: { id: true, ...dimensionColumns },
  });
  const pairs = matchDimensions<Known, Dimension>(
    rows.map((row) => ({ id: row.id, ...dimensionOf(row) })),
    dimensions,
  );
  for (const [was, is] of pairs) if (is === null) await takeOut(queries, was);
  const changed = pairs.flatMap(([was, is]): [Known, Dimension][] =>
    was !== null && is !== null && COLUMNS.some((column) => was[column] !== is[column]) ? [[was, is]] : [],
  );
  for (const [{ id }, is] of inFreeOrder(changed)) {
    const { section, station, zero, nominal, tolerance } = is;
    const data = { section, station, zero, nominal, tolerance, named: namedValue(is) };
    await queries.dimension.update({ where: { id }, data });
  }
  for (const [was, is] of pairs) if (was === null) await addDimension(queries, sheetId, is);
  return changed.map(([{ id }]) => id);
}

const COLUMNS = ['section', 'station', 'zero', 'nominal', 'tolerance'] as const;

async function takeOut(queries: Queries, { id, ...dimension }: Known): Promise<void> {
  const read = await queries.observation.count({ where: { dimensionId: id } });
  if (read > 0)
    throw new RangeError(
      `${upper(dimensionName(dimension))} has been read (${read} times set and read): it cannot be taken out. Correct its value, or copy the sheet under another name and take it out there.`,
    );
  await queries.dimension.delete({ where: { id } });
}

const upper = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * Lengths of one name are told apart by their value, so one that takes the value of another waits until that one has
 * left it. They keep their order, so growing ones go from the largest on and shrinking ones from the smallest.
 */
function inFreeOrder(changed: readonly [Known, Dimension][]): [Known, Dimension][] {
  const grows = ([was, is]: [Known, Dimension]) => is.nominal > was.nominal;
  return [
    ...changed.filter(grows).sort(([a], [b]) => b.nominal - a.nominal),
    ...changed.filter((pair) => !grows(pair)).sort(([a], [b]) => a.nominal - b.nominal),
  ];
}
