import { benjaminiHochberg } from '@/lib/stats';
import type { Change } from './change';
import { changeBehind } from './change-behind';
import { chartOf } from './chart';
import { designOf, type SignalOptions } from './design';
import { tailsOf, tailsOfAll } from './long-tails';
import type { ChartPoint, Design, Series, Signal, SignalChart, Subject } from './types';
import { evidenceWords, nextWords } from './words';

export interface Attention {
  /** Shop first, then gauges, sheets and technicians, each by name: never by the size of a figure. */
  signals: Signal[];
  charts: SignalChart[];
  design: Design;
  /** What to say where the list is empty. */
  quiet: string | null;
}

/** What is worked out of each series by itself: whoever asks again and again may remember it. */
export interface OneSeries {
  chart: typeof chartOf;
  change: typeof changeBehind;
  tails: typeof tailsOf;
}

export const ONE_SERIES: OneSeries = { chart: chartOf, change: changeBehind, tails: tailsOf };

const ORDER: readonly Subject['kind'][] = ['shop', 'gauge', 'sheet', 'technician'];

/**
 * What needs attention now: series in which a chart stands beyond its limit in one of the last periods, each with the
 * change behind it, its size and the next step. The charts are designed together, so that the whole list gives a false
 * alarm no oftener than stated, however many series there are.
 */
export function attention(
  series: readonly Series[],
  options: SignalOptions = {},
  { chart, change, tails }: OneSeries = ONE_SERIES,
): Attention {
  const { recent = 3 } = options;
  const { ewmaLimit, cusumLimit, ...design } = designOf(series, options);
  const excess = tailsOfAll(series.flatMap((one) => tails(one) ?? []));
  const charts = series.map((one) =>
    chart(one, { ...design, ewmaLimit, cusumLimit, ...(one.what === 'setting-scatter' && { excess }) }),
  );
  const alarms = charts.map(({ points }) => lastAlarm(points, recent));
  const changes = series.map((one, i) => change(one, alarms[i]?.side ?? null));
  const adjusted = benjaminiHochberg(changes.flatMap((change) => change?.p ?? []));
  let next = 0;
  const ps = changes.map((change) => (change?.p == null ? null : (adjusted[next++] ?? null)));
  const signals = series.flatMap((one, i): Signal[] => {
    const alarm = alarms[i] ?? null;
    return alarm === null ? [] : [signalOf(one, alarm, changes[i] ?? null, ps[i] ?? null)];
  });
  return {
    signals: signals.sort(inOrder),
    charts,
    design,
    quiet: signals.length === 0 ? quietWords(charts, design) : null,
  };
}

interface Alarm {
  side: 'up' | 'down';
  /** The first period of the unbroken run of alarms that reaches into the last ones, by its place in the series. */
  at: number;
}

/** From the newest period back, as far as it has to be looked. */
function lastAlarm(points: readonly ChartPoint[], recent: number): Alarm | null {
  let found: Alarm | null = null;
  let quiet = 0;
  for (let at = points.length - 1; at >= 0 && quiet < recent; at--) {
    const point = points[at];
    if (point === undefined || point.score === null) continue;
    if (found !== null && point.alarm !== found.side) break;
    if (point.alarm === null) quiet++;
    else found = { side: point.alarm, at };
  }
  return found;
}

function signalOf(series: Series, alarm: Alarm, change: Change | null, p: number | null): Signal {
  const direction = directionOf(series, alarm.side, change);
  const { what, subject } = series;
  // An alarm that was there by chance goes over into the one that the change raised.
  const noticed = series.periods[Math.max(alarm.at, change?.at ?? 0)]?.period ?? '';
  return {
    what,
    subject,
    direction,
    noticed,
    p,
    began: change?.began ?? null,
    size: change?.size ?? null,
    evidence: evidenceWords(series, noticed, change),
    next: nextWords(what, subject, direction),
  };
}

/** A rate is better up; scatter is better down; a bias is better where it moved towards 0. */
function directionOf(series: Series, side: 'up' | 'down', change: Change | null): Signal['direction'] {
  if (series.what === 'right-first-time') return side === 'up' ? 'better' : 'worse';
  if (series.what === 'setting-scatter') return side === 'down' ? 'better' : 'worse';
  // As the evidence has it, where it is known: the list must not call worse what it shows to be nearer to 0.
  if (change !== null && change.nearerZero !== null) return change.nearerZero ? 'better' : 'worse';
  const filled = series.periods.filter(({ n }) => n > 0);
  const early = filled.slice(0, Math.ceil(filled.length / 2));
  const n = early.reduce((sum, one) => sum + one.n, 0);
  const start = early.reduce((sum, one) => sum + one.n * one.mean, 0) / Math.max(1, n);
  const late = filled.at(-1)?.mean ?? 0;
  return Math.abs(late) < Math.abs(start) ? 'better' : 'worse';
}

function inOrder(a: Signal, b: Signal): number {
  const kind = ORDER.indexOf(a.subject.kind) - ORDER.indexOf(b.subject.kind);
  if (kind !== 0) return kind;
  const [x, y] = [`${a.subject.name ?? ''} ${a.what}`, `${b.subject.name ?? ''} ${b.what}`];
  return x < y ? -1 : x > y ? 1 : 0;
}

function quietWords(charts: readonly SignalChart[], { falseAlarmPeriods }: Design): string {
  const looked = charts.filter(({ why }) => why === null).length;
  if (looked === 0) return 'There is too little history to tell a change from chance.';
  const series = looked === 1 ? 'one series' : `${looked} series`;
  return (
    `Nothing stands out of chance in ${series}. That does not say that nothing changed: a small change shows late. ` +
    `Where nothing changes, a line would appear here by chance about once in ${falseAlarmPeriods} periods.`
  );
}
