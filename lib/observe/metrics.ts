import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client';

interface Metrics {
  registry: Registry;
  requests: Counter<'method' | 'route' | 'status'>;
  durations: Histogram<'route'>;
  refreshes: Histogram<'outcome'>;
  databaseUp: Gauge;
}

// One a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & { rehangMetrics?: Metrics };

function makeMetrics(): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const registers = [registry];
  return {
    registry,
    requests: new Counter({
      name: 'rehang_requests_total',
      help: 'Requests answered, by route (never by address) and status.',
      labelNames: ['method', 'route', 'status'],
      registers,
    }),
    durations: new Histogram({
      name: 'rehang_request_duration_seconds',
      help: 'From the first byte of the request to the last of the answer.',
      labelNames: ['route'],
      buckets: [0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30],
      registers,
    }),
    refreshes: new Histogram({
      name: 'rehang_refresh_duration_seconds',
      help: 'How long figures took to be brought up to date behind the pages.',
      labelNames: ['outcome'],
      buckets: [0.3, 1, 3, 10, 30, 100, 300],
      registers,
    }),
    databaseUp: new Gauge({
      name: 'rehang_database_up',
      help: '1 where the database answers and holds every migration.',
      registers,
    }),
  };
}

const metrics = (): Metrics => (held.rehangMetrics ??= makeMetrics());

/** A request that was answered. `route` as the program names it: `/jobs/[job]`, not an address. */
export function countRequest(method: string, route: string, status: number, seconds: number): void {
  metrics().requests.inc({ method, route, status: String(status) });
  metrics().durations.observe({ route }, seconds);
}

export function countRefresh(outcome: 'done' | 'failed', seconds: number): void {
  metrics().refreshes.observe({ outcome }, seconds);
}

/** What is said of one shop when its metrics are asked for. */
export interface ShopCounts {
  databaseUp: boolean;
  /** Age of the figures that pages show, s; null before the first. */
  figuresAge: number | null;
  /** Readings have come in since. */
  stale: boolean;
  files: number;
  readings: number;
}

/**
 * The metrics of this process, and of one shop, in the open exposition format. Those of a shop are made anew each
 * time, so that nothing of another shop is left among them.
 */
export async function metricsText(shop: ShopCounts): Promise<{ type: string; text: string }> {
  const { registry, databaseUp } = metrics();
  databaseUp.set(shop.databaseUp ? 1 : 0);
  const own = new Registry();
  const say = (name: string, help: string, value: number) =>
    new Gauge({ name, help, registers: [own] }).set(value);
  if (shop.figuresAge !== null)
    say('rehang_figures_age_seconds', 'Age of the figures that pages show.', shop.figuresAge);
  say('rehang_figures_stale', '1 where readings have come in since.', shop.stale ? 1 : 0);
  new Counter({ name: 'rehang_loads_total', help: 'Files loaded.', registers: [own] }).inc(shop.files);
  new Counter({ name: 'rehang_readings_total', help: 'Readings stored from files.', registers: [own] }).inc(
    shop.readings,
  );
  return { type: registry.contentType, text: (await registry.metrics()) + (await own.metrics()) };
}
