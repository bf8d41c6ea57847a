import { spawn } from 'node:child_process';
import { countRefresh, isStopping, keepTrack, note } from '@/lib/observe';
import type { ShopId } from '@/lib/store';

interface Turns {
  running: boolean;
  again: boolean;
}

// One a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & { rehangRefreshes?: Map<ShopId, Turns> };

/**
 * Brings figures and verdicts up to date behind the pages, in a process of its own so that no page waits for it.
 * One at a time for each shop: a call while one runs makes exactly one more run after it. Pages meanwhile show
 * the earlier fit with its date.
 */
export function refreshSoon(shop: ShopId): void {
  const refreshes = (held.rehangRefreshes ??= new Map<ShopId, Turns>());
  const turns = refreshes.get(shop) ?? { running: false, again: false };
  refreshes.set(shop, turns);
  if (turns.running) {
    turns.again = true;
    return;
  }
  if (isStopping()) return;
  turns.running = true;
  const start = performance.now();
  const child = spawn(process.execPath, ['lib/commands/begin.mjs', 'lib/commands/refresh.ts', String(shop)], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  // What it leaves undone is done at the next start.
  keepTrack(child, 'told');
  const stop = () => child.kill();
  process.once('exit', stop);
  const ended = (well: boolean) => {
    process.off('exit', stop);
    const seconds = (performance.now() - start) / 1000;
    countRefresh(well ? 'done' : 'failed', seconds);
    if (well) note.refreshed({ shop, seconds });
    turns.running = false;
    if (!turns.again) return;
    turns.again = false;
    refreshSoon(shop);
  };
  child.once('error', (error) => {
    note.refreshFailed({ shop }, error);
    ended(false);
  });
  child.once('exit', (code) => ended(code === 0));
}
