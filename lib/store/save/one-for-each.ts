import type { Reading, ReadingTable } from '@/lib/measure';

/**
 * One reading for each hand, gauge and dimension of a named sheet, in file order: what all readings together say of
 * people, gauges and sheets, and contradict of it, these say.
 */
export class OneForEach {
  /** Whether one was met, by its number. */
  readonly #hands: (boolean | undefined)[] = [];
  readonly #stated = new Map<string, (boolean | undefined)[]>();

  /** Those of a table that no table of the same file before it had. */
  newIn(table: ReadingTable): Reading[] {
    const { size, handAt, statedAt, placeAt, places } = table.lines;
    const readings: Reading[] = [];
    let lastJob = -1;
    let stated: (boolean | undefined)[] | null = null;
    for (let line = 0; line < size; line++) {
      const hand = handAt[line] ?? 0;
      const job = places.all[placeAt[line] ?? 0]?.job ?? -1;
      if (job !== lastJob) stated = this.#statedOf(table.sheetOf(job));
      lastJob = job;
      const dimension = statedAt[line] ?? 0;
      if (this.#hands[hand] === true && (stated === null || stated[dimension] === true)) continue;
      this.#hands[hand] = true;
      if (stated !== null) stated[dimension] = true;
      readings.push(table.reading(line));
    }
    return readings;
  }

  #statedOf(sheet: string | null): (boolean | undefined)[] | null {
    if (sheet === null) return null;
    const known = this.#stated.get(sheet);
    if (known !== undefined) return known;
    const made: (boolean | undefined)[] = [];
    this.#stated.set(sheet, made);
    return made;
  }
}
