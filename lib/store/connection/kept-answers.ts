import { LastUsed } from '@/lib/memory';

/** So many rows are held in all; of those that were asked for longest ago the answers are let go. */
const MOST_ROWS = 30_000;

interface Kept {
  version: number | string;
  rows: readonly unknown[];
}

/** Answers of a database to questions that are asked again and again, each with the version that it was given at. */
export class KeptAnswers {
  readonly #kept = new LastUsed<Kept>(MOST_ROWS, ({ rows }) => rows.length + 1);

  /** What was answered to this question at this version of the database, where that is known. */
  at(question: string, version: number | string): readonly unknown[] | null {
    const known = this.#kept.get(question);
    return known?.version === version ? known.rows : null;
  }

  /**
   * @param version of the whole database, read before the question was asked
   * @returns what the same question is answered with again
   */
  keep<Row>(question: string, version: number | string, rows: readonly Row[]): readonly Row[] {
    for (const row of rows) Object.freeze(row);
    this.#kept.set(question, { version, rows });
    return rows;
  }
}
