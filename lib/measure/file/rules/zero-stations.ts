import { grouped } from '@/lib/measure/grouped';
import type { Side } from '@/lib/measure/types';
import { roundKey, roundName, type Lines } from '../cross';
import type { Draft } from '../draft';

/**
 * The heights of a round stand on two zero stations, each side by itself. A round that may lack a line, since
 * another line of its job has a fault, is not blamed for what is missing.
 */
export function checkZeroStations(lines: Lines): void {
  for (const round of lines.by((d) => (d.quantity === 'height' ? roundKey(d) : null)).values()) {
    const [first] = round;
    if (first === undefined) continue;
    const sides = [...grouped(round, (d) => d.side ?? 'L')];
    for (const [side, heights] of sides) refuseSurplus(lines, heights, side);
    if (!lines.isAllRead(first.job)) continue;
    for (const [, heights] of sides) refuseUnpaired(lines, round, heights);
    if (!lines.isAllRead(first.job)) continue;
    refuseMissing(lines, sides);
  }
}

/** Stations of zero points, front to rear, with their lines. */
function zeroStations(heights: readonly Draft[]): Map<number, Draft[]> {
  const zero = heights.filter((d) => d.zero === true && d.station !== null);
  return new Map([...grouped(zero, (d) => d.station ?? NaN)].sort(([a], [b]) => a - b));
}

/** More than two: those outside the center section, then those read least, are taken for the odd ones. */
function refuseSurplus(lines: Lines, heights: readonly Draft[], side: Side): void {
  const stations = zeroStations(heights);
  if (stations.size <= 2) return;
  const outside = (group: readonly Draft[]) =>
    group.some((d) => (d.section ?? 'center') !== 'center') ? 1 : 0;
  const ranked = [...stations].sort(([, a], [, b]) => outside(a) - outside(b) || b.length - a.length);
  const places = [...stations.keys()].join(', ');
  for (const [station, group] of ranked.slice(2)) {
    for (const draft of group) {
      const message = `Point ${draft.point} ${side} is marked as a zero station, which makes ${stations.size} on this side (${places}) in ${roundName(draft)}. A sheet has two, in the center section: write no where it is neither.`;
      lines.refuse(draft, 'zero', message, `yes, at ${station}`);
    }
  }
}

/** A point that is not marked as zero although the other side of its station is. */
function refuseUnpaired(lines: Lines, round: readonly Draft[], heights: readonly Draft[]): void {
  const own = zeroStations(heights);
  if (own.size >= 2) return;
  const marked = zeroStations(round);
  for (const draft of heights) {
    if (draft.zero === true || draft.station === null || own.has(draft.station)) continue;
    const other = marked.get(draft.station)?.find((d) => d.side !== draft.side);
    if (other === undefined) continue;
    const message = `Point ${other.point} ${other.side ?? ''} at station ${draft.station} is marked as a zero station (${lines.placeOf(other)}), but point ${draft.point} ${draft.side ?? ''} at the same station is not. Write yes on both sides, or on neither.`;
    lines.refuse(draft, 'zero', message, 'no');
  }
}

/** Fewer than two on a side that has heights: said once for the round. */
function refuseMissing(lines: Lines, sides: readonly [Side, Draft[]][]): void {
  const short = sides.filter(([, heights]) => zeroStations(heights).size < 2);
  const [worst] = [...short].sort(([, a], [, b]) => zeroStations(a).size - zeroStations(b).size);
  const first = worst?.[1][0];
  if (worst === undefined || first === undefined) return;
  const [side, heights] = worst;
  const where = short.length === sides.length ? '' : ` on side ${side}`;
  const stations = [...zeroStations(heights).keys()];
  const found =
    stations.length === 0
      ? `no zero station${where}: nothing carries the datum plane`
      : `only one zero station${where} (${stations.join('')}): one cannot carry the datum plane`;
  const message = `${roundName(first)} has heights and ${found}. Add the readings of both zero stations and write yes in their column zero.`;
  lines.refuse(first, 'zero', message.charAt(0).toUpperCase() + message.slice(1), null);
}
