/** Values by name, of which those that were used longest ago are let go where there is no room for all. */
export class LastUsed<Value> {
  // In the order of their last use.
  readonly #kept = new Map<string, { value: Value; size: number }>();
  #size = 0;

  /**
   * @param most what all values take together, in whatever `sizeOf` counts; the one that was used last always stays.
   * @param sizeOf what one of them takes.
   */
  constructor(
    private readonly most: number,
    private readonly sizeOf: (value: Value, name: string) => number,
  ) {}

  /** A use of it. */
  get(name: string): Value | undefined {
    const known = this.#kept.get(name);
    if (known === undefined) return undefined;
    this.#kept.delete(name);
    this.#kept.set(name, known);
    return known.value;
  }

  /** In place of what there was by this name. */
  set(name: string, value: Value): void {
    this.delete(name);
    const size = this.sizeOf(value, name);
    this.#kept.set(name, { value, size });
    this.#size += size;
    for (const oldest of this.#kept.keys()) {
      if (this.#size <= this.most || oldest === name) break;
      this.delete(oldest);
    }
  }

  delete(name: string): void {
    this.#size -= this.#kept.get(name)?.size ?? 0;
    this.#kept.delete(name);
  }

  clear(): void {
    this.#kept.clear();
    this.#size = 0;
  }
}
