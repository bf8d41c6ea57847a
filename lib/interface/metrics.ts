import { isStopping, metricsText } from '@/lib/observe';
import { currentFigures } from '@/lib/refresh';
import { databaseReady, loadedSoFar } from '@/lib/store/health';
import type { TokenHolder } from '@/lib/store/tokens';

/** In the open exposition format. */
export async function shopMetrics({ shop }: TokenHolder): Promise<Response> {
  const [figures, loaded] = await Promise.all([currentFigures(shop.id), loadedSoFar(shop.id)]);
  const { type, text } = await metricsText({
    databaseUp: await isReady(),
    figuresAge: figures === null ? null : Math.max(0, (Date.now() - figures.fittedAt) / 1000),
    stale: figures?.stale ?? false,
    ...loaded,
  });
  return new Response(text, { headers: { 'Content-Type': type, 'Cache-Control': 'no-store' } });
}

/** Whether requests can be served: the database answers, holds every migration, and nobody told us to stop. */
export async function isReady(): Promise<boolean> {
  if (isStopping()) return false;
  return databaseReady().catch(() => false);
}
