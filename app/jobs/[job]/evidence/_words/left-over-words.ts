import { sideName } from '@/app/_words/dimensions';
import { millimetres, signedMillimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { Bar, Kind } from '@/lib/assess/evidence';
import type { Side } from '@/lib/measure';

/** `K left`; a centre pin has no side. */
export const heightName = (
  { point, side }: { point: string | null; side: Side | null },
  kind: Kind,
): string => (kind === 'centerline' || side === null ? (point ?? '?') : `${point ?? '?'} ${sideName(side)}`);

/** What a hypothesis leaves to chance where it fits worst. */
export function leftOverWords(bars: readonly Bar[], kind: Kind = 'height'): string {
  const t = words('evidence');
  const worst = leastFitting(bars);
  if (worst === null) return t('words.leftOver.none');
  return t('words.leftOver.worst', {
    height: heightName(worst, kind),
    read: signedMillimetres(worst.measured),
    expected: signedMillimetres(worst.expected),
    left: signedMillimetres(worst.measured - worst.expected),
    scatter: millimetres(worst.scatter),
  });
}

/** The height away from the zero stations that a hypothesis leaves most of to chance, in multiples of its scatter. */
function leastFitting(bars: readonly Bar[]): Bar | null {
  let worst: Bar | null = null;
  let most = 0;
  for (const bar of bars) {
    if (bar.zero) continue;
    const off = Math.abs(bar.measured - bar.expected) / bar.scatter;
    if (off > most) [worst, most] = [bar, off];
  }
  return worst;
}
