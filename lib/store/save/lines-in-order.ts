/** Lines there is room for at first. */
const FIRST = 1024;

/**
 * The lines of one job after another, each by the numbers of its setup, its dimension and its repeat: a million lines are
 * put in order without an object for each.
 */
export class LinesInOrder {
  count = 0;
  line = new Int32Array(FIRST);
  setup = new Int32Array(FIRST);
  dimension = new Int32Array(FIRST);
  repeat = new Int32Array(FIRST);
  #sorted = true;

  /** @param lines as many as there will be at most. */
  begin(lines: number): void {
    this.count = 0;
    this.#sorted = true;
    if (lines <= this.line.length) return;
    const room = () => new Int32Array(2 * lines);
    [this.line, this.setup, this.dimension, this.repeat] = [room(), room(), room(), room()];
  }

  add(line: number, setup: number, dimension: number, repeat: number): void {
    const at = this.count++;
    this.line[at] = line;
    this.setup[at] = setup;
    this.dimension[at] = dimension;
    this.repeat[at] = repeat;
    if (at > 0 && this.#sorted) this.#sorted = this.#compare(at - 1, at) <= 0;
  }

  /** By setup, dimension and repeat; the dimensions of a job's own sheet in the order they are met. */
  sort(): void {
    if (this.#sorted) return;
    const { count, line, setup, dimension, repeat } = this;
    const order = Int32Array.from({ length: count }, (_, at) => at).sort((a, b) => this.#compare(a, b));
    for (const column of [line, setup, dimension, repeat]) {
      const before = column.slice(0, count);
      for (let at = 0; at < count; at++) column[at] = before[order[at] ?? 0] ?? 0;
    }
  }

  #compare(a: number, b: number): number {
    const { setup, dimension, repeat } = this;
    return (
      (setup[a] ?? 0) - (setup[b] ?? 0) ||
      Math.abs(dimension[a] ?? 0) - Math.abs(dimension[b] ?? 0) ||
      (repeat[a] ?? 0) - (repeat[b] ?? 0)
    );
  }
}
