import type { HabitKey, MeanHabit, RoundHabit } from '../keys';
import { clusterOf } from '../moments';
import { addToNewest, MOST_SHOWN_OF_A_JOB, type Shown } from '../shown';
import { emptyTally, type HabitTally } from '../tally';

interface Sum {
  n: number;
  s: number;
}

/** What is gathered of one technician in one job, before the job becomes one cluster of its means. */
export class Sheaf {
  readonly tally: HabitTally = emptyTally();
  readonly #means = new Map<MeanHabit, { all: Sum; by: Map<string, Sum> }>();
  readonly #shown = new Map<string, Shown[]>();

  look(habit: HabitKey, setups = 1): void {
    this.tally.looked[habit] = (this.tally.looked[habit] ?? 0) + setups;
  }

  round(habit: RoundHabit, shows: boolean): void {
    const counts = this.tally.rounds[habit];
    counts.n++;
    if (shows) counts.x++;
  }

  mean(habit: MeanHabit, n: number, s: number, gauge: string | null = null): void {
    let sums = this.#means.get(habit);
    if (sums === undefined)
      this.#means.set(habit, (sums = { all: { n: 0, s: 0 }, by: new Map<string, Sum>() }));
    sums.all.n += n;
    sums.all.s += s;
    if (gauge === null) return;
    const own = sums.by.get(gauge) ?? { n: 0, s: 0 };
    sums.by.set(gauge, { n: own.n + n, s: own.s + s });
  }

  show(what: string, setup: Shown): void {
    const newest = this.#shown.get(what);
    if (newest === undefined) this.#shown.set(what, [setup]);
    else addToNewest(newest, setup, MOST_SHOWN_OF_A_JOB);
  }

  /** The job as one cluster. */
  finish(): HabitTally {
    for (const [habit, { all, by }] of this.#means) {
      const mean = this.tally.means[habit];
      mean.all = clusterOf(all.n, all.s);
      for (const [gauge, { n, s }] of by) mean.by[gauge] = clusterOf(n, s);
    }
    for (const [what, newest] of this.#shown) this.tally.shown[what] = newest;
    return this.tally;
  }
}
