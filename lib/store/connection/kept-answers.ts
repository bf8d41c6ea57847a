import { LastUsed } from '@/lib/memory';

/** So many rows are held in all; of those that were asked for longest ago the answers are let go. */
const MOST_ROWS = 30_000;

interface Kept {
  version: number;
  rows: readonly unknown[];
}

/** Answers of a database to questions that are asked again and again, each with the version that it was given at. */
export class KeptAnswers {
  readonly #kept = new LastUsed<Kept>(MOST_ROWS, ({ rows }) => rows.length + 1);

  /** @param version of the whole database, read before the question is asked */
  of<Row>(question: string, version: number, answer: () => readonly Row[]): readonly Row[] {
    const known = this.#kept.get(question);
    // What was answered to this question before, the same question is answered with again.
    if (known?.version === version) return known.rows as readonly Row[];
    const rows = answer();
    this.#kept.set(question, { version, rows });
    return rows;
  }
}
