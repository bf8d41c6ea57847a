import { checkRows, isFault, rowsOf } from '@/lib/measure/sheet';
import { transaction } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import { storedSide } from '@/lib/store/sql/side';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, Sheet, SheetOrigin, ShopId } from '@/lib/store/types';
import { addDimension } from './add-dimension';
import { contentColumns, contentOf } from './content-row';
import { revisionDocument } from './revision-document';
import { writeRevision } from './write-revision';

const LONGEST_NAME = 80;

/**
 * Adds a sheet by hand or by sheet file, with its first revision.
 * @throws RangeError where the name is taken or none, or the sheet has a fault.
 */
export async function createSheet(
  shop: ShopId,
  sheet: Sheet,
  origin: Extract<SheetOrigin, 'entered' | 'loaded'>,
  actor: Actor,
): Promise<void> {
  await addSheet(shop, sheet, { origin, copiedFrom: null }, actor);
}

/** A sheet under another name, to be corrected by itself. @throws RangeError where there is none, or the name is taken. */
export async function copySheet(shop: ShopId, from: string, name: string, actor: Actor): Promise<void> {
  await addSheet(shop, { name, from }, { origin: 'copied', copiedFrom: from }, actor);
}

async function addSheet(
  shop: ShopId,
  sheet: Sheet | { name: string; from: string },
  { origin, copiedFrom }: { origin: SheetOrigin; copiedFrom: string | null },
  actor: Actor,
): Promise<void> {
  const name = sheet.name.trim().normalize('NFC');
  if (name === '' || name.length > LONGEST_NAME || /[\p{Cc}\u2028\u2029]/u.test(name))
    throw new RangeError(`Give the sheet a name of 1 to ${LONGEST_NAME} characters.`);
  const { person } = actor;
  if (person === null) throw new RangeError('Say who: a sheet is entered in the name of a person only.');
  await transaction(shop, async (queries) => {
    const personId = await personRow(queries, shop, person);
    const at = (of: string) => ({ where: { shopId_name: { shopId: shop, name: of } } });
    if ((await queries.sheet.findUnique(at(name))) !== null)
      throw new RangeError(`There is a sheet ${name} already. Choose another name, or correct that one.`);
    const original =
      'from' in sheet ? await queries.sheet.findUnique({ ...at(sheet.from), select: contentColumns }) : null;
    if ('from' in sheet && original === null) throw new RangeError(`The shop has no sheet ${sheet.from}.`);
    const content = 'from' in sheet ? contentOf(original ?? { points: [], dimensions: [] }) : sheet;
    // A copy may hold what is to be corrected in it.
    if (origin !== 'copied' && checkRows(rowsOf(content)).some(isFault))
      throw new RangeError('The sheet has faults: check it, and mend what is named.');
    const { id } = await queries.sheet.create({ data: { shopId: shop, name } });
    for (const { side, ...point } of content.points)
      await queries.sheetPoint.create({ data: { sheetId: id, ...point, side: storedSide(side) } });
    for (const dimension of content.dimensions) await addDimension(queries, id, dimension);
    const document = revisionDocument(content, origin, copiedFrom);
    await writeRevision(queries, shop, { sheetId: id, revision: 1, document, reason: null, personId });
    await writeTrace(queries, shop, actor, {
      action: origin === 'copied' ? 'copied' : 'added',
      kind: 'sheet',
      subject: subjectOf.sheet(name),
      before: copiedFrom === null ? null : { sheet: copiedFrom },
      after: { points: content.points.length, dimensions: content.dimensions.length },
    });
  });
}
