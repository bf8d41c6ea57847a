import { dimensionKey, type Dimension, type KnownSheet } from '@/lib/measure';

/** The shop's sheets as the file reader takes them. */
export function knownSheets(book: ReadonlyMap<string, readonly Dimension[]>): Map<string, KnownSheet> {
  return new Map(
    [...book].map(([sheet, dimensions]) => [
      sheet,
      new Map(dimensions.map((one) => [dimensionKey(one), one])),
    ]),
  );
}
