import { mayBeDiagonal, sharedLetters, type Dimension } from '@/lib/measure';

/** The sheet values of each length of a sheet, by its name and in the order stated, and what the name can stand for. */
export class LengthValues {
  readonly #shared: ReadonlySet<string>;
  readonly #values = new Map<string, number[]>();

  /** @param dimensions everything that is known of the sheet, its heights included: they tell which letters are shared. */
  constructor(dimensions: Iterable<Dimension>) {
    const all = [...dimensions];
    this.#shared = sharedLetters(all);
    for (const { quantity, point, nominal } of all) {
      if (quantity !== 'length') continue;
      const values = this.#values.get(point) ?? [];
      if (!values.includes(nominal)) values.push(nominal);
      this.#values.set(point, values);
    }
  }

  /**
   * What the sheet states of this length already, where this value would be one too many: a second one of a
   * length that has its sides said, or a third one beside the straight length and its diagonal. Else null.
   */
  contradicted({ point, nominal }: Pick<Dimension, 'point' | 'nominal'>): number[] | null {
    const values = (this.#values.get(point) ?? []).slice(0, mayBeDiagonal(point, this.#shared) ? 2 : 1);
    return values.length === 0 || values.includes(nominal) ? null : values;
  }
}
