import { newest, type Shown } from './shown';
import type { HabitTally } from './tally';

/** Setups that show something, by technician and then by what they show, as in `HabitTally.shown`. */
export type ShownApart = Map<string, Map<string, Shown[]>>;

/** Beyond so many a list is cut back to the newest. */
const LONG = 1000;

/**
 * The newest setups of many tallies, kept apart from their sums: they are half of what a tally holds, and whoever adds
 * up which of them first, the newest of all are the same.
 */
export class ShownSums {
  readonly #found: ShownApart = new Map();

  /** The tallies without what they show, which is taken in. */
  takenFrom(tallies: ReadonlyMap<string, HabitTally>): Map<string, HabitTally> {
    return new Map(
      [...tallies].map(([technician, tally]) => {
        for (const [what, setups] of Object.entries(tally.shown)) this.#add(technician, what, setups);
        return [technician, { ...tally, shown: {} }];
      }),
    );
  }

  add(more: ShownApart): void {
    for (const [technician, own] of more)
      for (const [what, setups] of own) this.#add(technician, what, setups);
  }

  all(): ShownApart {
    return new Map(
      [...this.#found].map(([technician, own]) => [
        technician,
        new Map([...own].map(([what, setups]) => [what, newest(setups)])),
      ]),
    );
  }

  /** Puts them back to where they belong. */
  into(tallies: ReadonlyMap<string, HabitTally>): Map<string, HabitTally> {
    const all = this.all();
    return new Map(
      [...tallies].map(([technician, tally]) => [
        technician,
        { ...tally, shown: Object.fromEntries(all.get(technician) ?? []) },
      ]),
    );
  }

  #add(technician: string, what: string, setups: readonly Shown[]): void {
    let own = this.#found.get(technician);
    if (own === undefined) this.#found.set(technician, (own = new Map<string, Shown[]>()));
    const list = own.get(what);
    if (list === undefined) own.set(what, [...setups]);
    else {
      list.push(...setups);
      if (list.length > LONG) own.set(what, newest(list));
    }
  }
}
