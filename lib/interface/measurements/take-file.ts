import { createReadStream } from 'node:fs';
import { z } from 'zod';
import { dimensionKey, tabulateMeasurementFile, type Fault, type KnownSheet } from '@/lib/measure';
import { saveTable, sheetBook, shopOfId, StoreConflict } from '@/lib/store';

/** A file that has arrived, and what to do with it. */
export const arrived = z.object({
  shop: z.int(),
  path: z.string(),
  name: z.string(),
  bytes: z.int(),
  sha256: z.string(),
  dryRun: z.boolean(),
});
export type Arrived = z.infer<typeof arrived>;

/** Faults that are told; a file with more is mended step by step anyway. */
const FAULTS_TOLD = 10_000;

const summary = z.object({
  readings: z.int(),
  jobs: z.int(),
  rounds: z.int(),
  setups: z.int(),
  from: z.number().nullable(),
  to: z.number().nullable(),
  ignoredColumns: z.array(z.string()),
  notes: z.array(z.string()),
});

/** What became of it: `stored` is null where nothing was to be stored, or nothing could be. */
export const takenFile = z.object({
  summary,
  stored: z
    .object({
      added: z.int(),
      alreadyThere: z.int(),
      causes: z.int(),
      jobs: z.array(z.string()),
      newJobs: z.int(),
      newSetups: z.int(),
      newSheets: z.int(),
      newPeople: z.array(z.string()),
      newGauges: z.array(z.string()),
    })
    .nullable(),
  faults: z.array(z.object({ line: z.int().nullable(), column: z.string().nullable(), reason: z.string() })),
  faultCount: z.int(),
});
export type TakenFile = z.infer<typeof takenFile>;

/** Reads a file and stores it, all or nothing; after a dry run, or where there is a fault, nothing is stored. */
export async function takeFile({ shop: id, path, name, bytes, sha256, dryRun }: Arrived): Promise<TakenFile> {
  const shop = await shopOfId(id);
  if (shop === null) throw new RangeError(`There is no shop ${id} any more.`);
  const book = await sheetBook(id);
  const known = new Map<string, KnownSheet>(
    [...book].map(([sheet, dimensions]) => [
      sheet,
      new Map(dimensions.map((one) => [dimensionKey(one), one])),
    ]),
  );
  const {
    readings,
    faults,
    summary: found,
  } = await tabulateMeasurementFile(createReadStream(path), {
    name,
    bytes,
    timeZone: shop.timeZone,
    knownSheets: (sheet) => known.get(sheet),
  });
  const held = summary.parse(found);
  if (readings === null) return refused(held, faults.map(plain));
  if (dryRun) return { summary: held, stored: null, faults: [], faultCount: 0 };
  try {
    const file = { name, sha256, lines: found.lines };
    const stored = await saveTable(id, readings, file, { person: null, via: 'interface' });
    return { summary: held, stored, faults: [], faultCount: 0 };
  } catch (error) {
    if (!(error instanceof StoreConflict)) throw error;
    return refused(held, error.conflicts);
  }
}

const plain = ({ line, column, message }: Fault) => ({ line, column, reason: message });

const refused = (
  held: z.infer<typeof summary>,
  faults: readonly TakenFile['faults'][number][],
): TakenFile => ({
  summary: held,
  stored: null,
  faults: faults.slice(0, FAULTS_TOLD).map(({ line, column, reason }) => ({ line, column, reason })),
  faultCount: faults.length,
});
