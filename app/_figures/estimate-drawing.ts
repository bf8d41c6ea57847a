import { bareMillimetres, signed } from '@/app/_words/numbers';
import type { Drawing } from './drawing/drawing';
import { estimateAxis, estimateTick, type EstimateKind } from './estimate-axis';
import { intervalDrawing, type Interval } from './interval-drawing';

/** The same as `EstimateTable` as a chart, for a file of its own. */
export function estimateDrawing(
  what: string,
  kind: EstimateKind,
  intervals: readonly Interval[],
  band?: { low: number | null; high: number | null },
): Drawing {
  const axis = estimateAxis(intervals, kind, band);
  return intervalDrawing({
    what,
    axis,
    intervals,
    band,
    print: (value) => (kind === 'bias' ? signed(value, 2) : bareMillimetres(value, 2)),
    tick: (tick) => estimateTick(tick, kind, axis),
    neutral: kind === 'bias' ? 0 : undefined,
  });
}
