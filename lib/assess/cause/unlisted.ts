/** Steps of ln in which what is not listed is counted: the sum is at most one step too large. */
const STEPS = 32;
/** Counted from so far below the reference, in ln, to so far above it; the rest is summed, or counts as lowest. */
const BELOW = 60;
const ABOVE = 40;
const LAST = (BELOW + ABOVE) * STEPS - 1;
/** What one that is counted in a step weighs at most, beside the reference. */
const AT_MOST = Float64Array.from({ length: LAST + 1 }, (_, at) => Math.exp((at + 1) / STEPS - BELOW));

/**
 * A bound on the summed weight of many hypotheses that are not worth listing, from their ln. They are counted by
 * steps instead of summed one by one, since the search passes over many million of them.
 */
export class Unlisted {
  #counts = new Int32Array(LAST + 1);
  #lowest = LAST;
  #highest = 0;
  #from = 0;
  #beyond = 0;

  /** @param reference about as high as the weights will be. */
  begin(reference: number): void {
    if (this.#lowest <= this.#highest) this.#counts.fill(0, this.#lowest, this.#highest + 1);
    this.#lowest = LAST;
    this.#highest = 0;
    this.#from = reference - BELOW;
    this.#beyond = 0;
  }

  add(logWeight: number): void {
    const steps = (logWeight - this.#from) * STEPS;
    if (steps >= LAST + 1) {
      this.#beyond += Math.exp(Math.min(logWeight - this.#from - BELOW, 600));
      return;
    }
    const at = steps > 0 ? Math.floor(steps) : 0;
    this.#counts[at] = (this.#counts[at] ?? 0) + 1;
    if (at < this.#lowest) this.#lowest = at;
    if (at > this.#highest) this.#highest = at;
  }

  /** ln of the bound; minus infinity where nothing was added. */
  get logSum(): number {
    let sum = this.#beyond;
    for (let at = this.#lowest; at <= this.#highest; at++) {
      const count = this.#counts[at] ?? 0;
      if (count > 0) sum += count * (AT_MOST[at] ?? 0);
    }
    return Math.log(sum) + this.#from + BELOW;
  }
}
