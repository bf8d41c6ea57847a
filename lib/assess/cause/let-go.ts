/** So far behind, in ln, a weight changes no digit of the other. */
const UNSEEN = -40;

/**
 * Lets go of what falls behind the best score by more than `reach`, in ln. What is let go of a kind that is kept gives
 * the likeliest of the kind its weight.
 */
export class LetGo {
  #scores = new Float64Array(512);
  #count = 0;
  #best = -Infinity;
  #reach = 0;
  /** Where the likeliest of each kind that is kept stands. */
  readonly #likeliest = new Map<number, number>();

  /** @param count how many will have a score. */
  begin(count: number, reach: number): void {
    if (this.#scores.length < count) this.#scores = new Float64Array(2 * count);
    this.#count = count;
    this.#best = -Infinity;
    this.#reach = reach;
  }

  /** What scores less is let go, as far as scores are known. */
  get floor(): number {
    return this.#best - this.#reach;
  }

  isWorth(score: number): boolean {
    return score >= this.floor;
  }

  score(index: number, score: number): void {
    this.#scores[index] = score;
    if (score > this.#best) this.#best = score;
  }

  /**
   * @param kind by index.
   * @param logWeight by index: that of the likeliest of a kind grows by what is let go of it.
   * @returns which are kept, going up, and the share of the kinds that are let go.
   */
  end(kind: Int32Array, logWeight: Float64Array): { order: number[]; dropped: number } {
    const scores = this.#scores;
    const likeliest = this.#likeliest;
    const { floor } = this;
    const order: number[] = [];
    likeliest.clear();
    let kept = 0;
    for (let index = 0; index < this.#count; index++) {
      const score = scores[index] ?? -Infinity;
      if (score < floor) continue;
      order.push(index);
      kept += Math.exp(score - this.#best);
      const number = kind[index] ?? 0;
      const known = likeliest.get(number);
      if (known === undefined || score > (scores[known] ?? -Infinity)) likeliest.set(number, index);
    }
    if (order.length === this.#count) return { order, dropped: 0 };
    let dropped = 0;
    for (let index = 0; index < this.#count; index++) {
      const score = scores[index] ?? -Infinity;
      if (score >= floor || score - this.#best < UNSEEN) continue;
      const kin = likeliest.get(kind[index] ?? 0);
      if (kin === undefined) {
        dropped += Math.exp(score - this.#best);
        continue;
      }
      const more = Math.log1p(Math.exp(score - (scores[kin] ?? -Infinity)));
      scores[kin] = (scores[kin] ?? -Infinity) + more;
      logWeight[kin] = (logWeight[kin] ?? -Infinity) + more;
    }
    return { order, dropped: dropped / (kept + dropped) };
  }
}
