import { inParts } from '@/lib/measure/in-parts';

/** Jobs that are held at once: as many as keep every thread busy while the next are read. */
const JOBS_AT_ONCE = 100;
/** Rounds that one thread is handed at once. */
const A_PART = 10;

export interface Turn<Item, Result> {
  take: (jobs: readonly string[]) => Promise<readonly Item[]>;
  /** One result for each item. */
  work: (items: readonly Item[]) => Promise<readonly Result[]>;
  keep: (items: readonly Item[], results: readonly Result[]) => Promise<void>;
}

/** Takes jobs a few at a time, works on them in parts and keeps what came out; while some are under work, the next are read. */
export async function inTurns<Item, Result>(
  jobs: readonly string[],
  { take, work, keep }: Turn<Item, Result>,
): Promise<void> {
  const turn = (start: number) => {
    const some = jobs.slice(start, start + JOBS_AT_ONCE);
    return some.length === 0 ? null : take(some);
  };
  let next = turn(0);
  for (let start = JOBS_AT_ONCE; next !== null; start += JOBS_AT_ONCE) {
    const items = await next;
    const working = Promise.all(inParts(items, A_PART).map(work)).then((results) => results.flat());
    // Asked for before the work is done. Should that fail, nobody waits for it any more: its own failure says nothing new.
    next = turn(start);
    next?.catch(() => undefined);
    await keep(items, await working);
  }
}
