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

/** The thing of this number, which its own table gave out. */
export function thing<Thing>(all: readonly Thing[], index: number): Thing {
  const found = all[index];
  if (found === undefined) throw new RangeError(`There is nothing of the number ${index}.`);
  return found;
}
