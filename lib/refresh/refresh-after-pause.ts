import type { ShopId } from '@/lib/store';
import { refreshSoon } from './refresh-soon';

/** Nobody enters for so long: a gauge is being hung, or the round is over, ms. */
const PAUSE = 30_000;
/** How long figures may lag behind somebody who never pauses, ms. */
const LONGEST = 5 * 60_000;

interface Waiting {
  timer: NodeJS.Timeout;
  since: number;
}

// One a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & { rehangPauses?: Map<ShopId, Waiting> };

/**
 * Has figures follow when entering pauses: learning anew for every single reading would keep a core busy for as long
 * as somebody measures. What a stopped process leaves undone is done at the next start.
 */
export function refreshAfterPause(shop: ShopId, now = Date.now()): void {
  const waiting = (held.rehangPauses ??= new Map<ShopId, Waiting>());
  const before = waiting.get(shop);
  clearTimeout(before?.timer);
  const since = before?.since ?? now;
  const timer = setTimeout(
    () => {
      waiting.delete(shop);
      refreshSoon(shop);
    },
    Math.max(0, Math.min(PAUSE, since + LONGEST - now)),
  );
  timer.unref();
  waiting.set(shop, { timer, since });
}
