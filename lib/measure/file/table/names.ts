/** Texts that recur, each kept once and known by a number. */
export class Names {
  readonly all: string[] = [];
  private readonly at = new Map<string, number>();

  of(name: string): number {
    let index = this.at.get(name);
    if (index === undefined) {
      index = this.all.push(name) - 1;
      this.at.set(name, index);
    }
    return index;
  }
}

/** Things that recur, each kept once under its key and known by a number. */
export class Kinds<Thing> {
  readonly all: Thing[] = [];
  private readonly at = new Map<string, number>();

  of(key: string, make: () => Thing): number {
    let index = this.at.get(key);
    if (index === undefined) {
      index = this.all.push(make()) - 1;
      this.at.set(key, index);
    }
    return index;
  }
}

/** More than there are lines, so than there can be names. */
const MORE = 2 ** 22;

/** Pairs of numbers that recur, each known by a number of its own. */
export class Pairs {
  readonly #at = new Map<number, number>();

  get size(): number {
    return this.#at.size;
  }

  of(one: number, other: number): number {
    const pair = one * MORE + other;
    let index = this.#at.get(pair);
    if (index === undefined) {
      index = this.#at.size;
      this.#at.set(pair, index);
    }
    return index;
  }
}

/** The thing of this number, which its own table gave out. */
export function thing<Thing>(all: readonly Thing[], index: number): Thing {
  const found = all[index];
  if (found === undefined) throw new RangeError(`There is nothing of the number ${index}.`);
  return found;
}
