/** So many rows are held in all; of those that were asked for longest ago the answers are let go. */
const MOST_ROWS = 30_000;

/** Answers of a database to questions that are asked again and again, each with the version that it was given at. */
export class KeptAnswers {
  readonly #kept = new Map<string, { version: number; rows: readonly unknown[] }>();
  #rows = 0;

  /** @param version of the whole database, read before the question is asked */
  of<Row>(question: string, version: number, answer: () => readonly Row[]): readonly Row[] {
    const known = this.#kept.get(question);
    const rows = known?.version === version ? known.rows : answer();
    // Last in the order of letting go.
    this.#kept.delete(question);
    this.#kept.set(question, { version, rows });
    this.#rows += rows.length + 1 - (known === undefined ? 0 : known.rows.length + 1);
    for (const [oldest, { rows: gone }] of this.#kept) {
      if (this.#rows <= MOST_ROWS || oldest === question) break;
      this.#kept.delete(oldest);
      this.#rows -= gone.length + 1;
    }
    // What was answered to this question before, the same question is answered with again.
    return rows as readonly Row[];
  }
}
