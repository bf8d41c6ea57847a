/** Milliseconds after which a turn is over in any case: whoever waits for something else holds up nobody. */
const LONGEST = 1000;

/**
 * Lets a few begin at a time, the others one after another in the order they came. What takes the one thread there is
 * for itself is done no later by that, and on average in half the time: begun all at once, all would end last.
 */
export class Turns {
  readonly #waiting: (() => void)[] = [];
  #taken = 0;

  /**
   * @param most at a time
   * @param longest ms after which a turn ends by itself
   */
  constructor(
    private readonly most: number,
    private readonly longest = LONGEST,
  ) {}

  /** Waits for a turn. What is handed back ends it; more than once does no harm. */
  async take(): Promise<() => void> {
    if (this.#taken >= this.most) await new Promise<void>((begin) => this.#waiting.push(begin));
    else this.#taken++;
    let over = false;
    const end = () => {
      if (over) return;
      over = true;
      clearTimeout(late);
      this.#next();
    };
    const late = setTimeout(end, this.longest);
    late.unref();
    return end;
  }

  /** Hands the turn that ended to whoever has waited longest. */
  #next(): void {
    const begin = this.#waiting.shift();
    if (begin === undefined) this.#taken--;
    else begin();
  }
}
