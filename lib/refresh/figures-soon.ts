import { setImmediate as breathe } from 'node:timers/promises';
import { countRefresh, isStopping, note } from '@/lib/observe';
import type { ShopId } from '@/lib/store';
import { followFigures } from './follow-figures';
import { refreshSoon } from './refresh-soon';

interface Waiting {
  jobs: Set<string>;
  changes: number;
}

// One a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & {
  rehangFigures?: { waiting: Map<ShopId, Waiting>; working: Set<ShopId> };
};

/**
 * Has all figures follow a change of these jobs, in this process, after whoever changed them was answered; where that
 * does not do, by a refresh. What comes meanwhile follows after it, together.
 */
export function figuresSoon(shop: ShopId, jobs: readonly string[], program: string): void {
  const { waiting, working } = (held.rehangFigures ??= { waiting: new Map(), working: new Set() });
  const own = waiting.get(shop) ?? { jobs: new Set<string>(), changes: 0 };
  for (const job of jobs) own.jobs.add(job);
  own.changes += 1;
  waiting.set(shop, own);
  if (working.has(shop)) return;
  working.add(shop);
  void followAll(shop, program, waiting).finally(() => working.delete(shop));
}

async function followAll(shop: ShopId, program: string, waiting: Map<ShopId, Waiting>): Promise<void> {
  // The answer goes first.
  await breathe();
  for (let own = waiting.get(shop); own !== undefined && !isStopping(); own = waiting.get(shop)) {
    waiting.delete(shop);
    if (!(await followed(shop, own, program))) refreshSoon(shop);
  }
}

async function followed(shop: ShopId, { jobs, changes }: Waiting, program: string): Promise<boolean> {
  const start = performance.now();
  try {
    const done = await followFigures(shop, [...jobs], changes, program);
    if (done) countRefresh('done', (performance.now() - start) / 1000);
    return done;
  } catch (error) {
    note.refreshFailed({ shop }, error);
    return false;
  }
}
