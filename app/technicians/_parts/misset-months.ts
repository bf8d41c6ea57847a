import { monthPoints } from '@/app/_figures/rates-over-time/months';
import type { RatePoint } from '@/app/_figures/rates-over-time/point';
import type { HeldMonths } from '@/app/_figures/stretch/asked-months';
import type { MissetCount } from '@/lib/assess/answers';
import { fewQuestions, frozen, onceFor } from '@/lib/memory';

/** By month: of the setups away from the zero stations, how many were likely off by more than the tolerance. */
export const missetMonths = (
  counts: readonly MissetCount[],
  { from, to, gauge }: HeldMonths & { gauge: string | undefined },
): readonly RatePoint[] => counted(counts)([from, to, gauge]);

const counted = onceFor((counts: readonly MissetCount[]) =>
  fewQuestions((span: Span): readonly RatePoint[] => frozen(pointsOf(counts, span))),
);

type Span = [from: string | undefined, to: string | undefined, gauge: string | undefined];

function pointsOf(counts: readonly MissetCount[], [from, to, gauge]: Span): RatePoint[] {
  const months = new Map<string, { month: string; of: number; hits: number }>();
  for (const { month, gauge: hung, setups, misset } of counts) {
    if ((from !== undefined && month < from) || (to !== undefined && month > to)) continue;
    if (gauge !== undefined && hung !== gauge) continue;
    const counted = months.get(month) ?? { month, of: 0, hits: 0 };
    months.set(month, { month, of: counted.of + setups, hits: counted.hits + misset });
  }
  return monthPoints([...months.values()]);
}
