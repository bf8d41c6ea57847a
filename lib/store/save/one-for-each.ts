import type { Reading, ReadingTable } from '@/lib/measure';

/**
 * One reading of the table for each hand, gauge and dimension of a named sheet, in file order: what all of them
 * together say of people, gauges and sheets, and contradict of it, these say.
 */
export function oneForEach(table: ReadingTable): Reading[] {
  const { size, handAt, statedAt, stated, placeAt, places } = table.lines;
  const width = stated.all.length;
  const sheetOf = new Map<string, number>();
  const sheetOfJob = table.jobs.map((_, job) => {
    const name = table.sheetOf(job);
    if (name === null) return -1;
    const number = sheetOf.get(name) ?? sheetOf.size;
    sheetOf.set(name, number);
    return number;
  });
  const hands = new Set<number>();
  const dimensions = new Set<number>();
  const readings: Reading[] = [];
  for (let line = 0; line < size; line++) {
    const hand = handAt[line] ?? 0;
    const sheet = sheetOfJob[places.all[placeAt[line] ?? 0]?.job ?? -1] ?? -1;
    const dimension = sheet * width + (statedAt[line] ?? 0);
    const isNew = !hands.has(hand) || (sheet >= 0 && !dimensions.has(dimension));
    if (!isNew) continue;
    hands.add(hand);
    if (sheet >= 0) dimensions.add(dimension);
    readings.push(table.reading(line));
  }
  return readings;
}
