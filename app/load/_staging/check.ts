import { dimensionKey, tabulateMeasurementFile, type Fault, type KnownSheet } from '@/lib/measure';
import { sheetBook, type Shop } from '@/lib/store';
import { faultGroups } from './fault-groups';
import { FAULTS_KEPT, type CheckedFile, type StagedFile } from './staged-file';
import { stagedBytes } from './staging';

/** Told the share of the bytes that is read, from 0 to 1. */
export type Tell = (share: number) => void;

/** Reads a staged file against the sheets that the shop knows. */
export async function readStagedFile(id: string, { name, bytes }: StagedFile, shop: Shop, tell: Tell) {
  const book = await sheetBook(shop.id);
  const known = new Map<string, KnownSheet>(
    [...book].map(([sheet, dimensions]) => [
      sheet,
      new Map(dimensions.map((one) => [dimensionKey(one), one])),
    ]),
  );
  return tabulateMeasurementFile(told(stagedBytes(id), bytes, tell), {
    name,
    bytes,
    timeZone: shop.timeZone,
    knownSheets: (sheet) => known.get(sheet),
  });
}

/** What a staged file holds and what is wrong with it, for the page that asks for confirmation. */
export async function checkStagedFile(
  id: string,
  staged: StagedFile,
  shop: Shop,
  tell: Tell,
): Promise<StagedFile> {
  const { summary, faults } = await readStagedFile(id, staged, shop, tell);
  return { ...staged, checked: { summary, ...firstOf(faults) } };
}

/** The faults as they are kept for the page. */
export function firstOf(faults: readonly Fault[]): Pick<CheckedFile, 'faults' | 'faultCount'> {
  return { faults: faultGroups(faults).slice(0, FAULTS_KEPT), faultCount: faults.length };
}

async function* told(pieces: AsyncIterable<Uint8Array>, bytes: number, tell: Tell) {
  let read = 0;
  for await (const piece of pieces) {
    yield piece;
    read += piece.length;
    tell(bytes === 0 ? 1 : Math.min(1, read / bytes));
  }
}
