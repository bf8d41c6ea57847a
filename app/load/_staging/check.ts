import { dimensionKey, readMeasurementFile, type KnownSheet } from '@/lib/measure';
import { sheetBook, type Shop } from '@/lib/store';
import { FAULTS_KEPT, type StagedFile } from './staged-file';
import { stagedBytes } from './staging';

/** Reads a staged file against the sheets that the shop knows. */
export async function readStagedFile(id: string, name: string, shop: Shop) {
  const book = await sheetBook(shop.id);
  const known = new Map<string, KnownSheet>(
    [...book].map(([sheet, dimensions]) => [
      sheet,
      new Map(dimensions.map((one) => [dimensionKey(one), one])),
    ]),
  );
  return readMeasurementFile(stagedBytes(id), {
    name,
    timeZone: shop.timeZone,
    knownSheets: (sheet) => known.get(sheet),
  });
}

/** What a staged file holds and what is wrong with it, for the page that asks for confirmation. */
export async function checkStagedFile(
  id: string,
  name: string,
  sha256: string,
  shop: Shop,
): Promise<StagedFile> {
  const { summary, faults } = await readStagedFile(id, name, shop);
  return {
    name,
    sha256,
    summary,
    faults: faults.slice(0, FAULTS_KEPT),
    faultCount: faults.length,
    result: null,
  };
}
