import { isWithin } from '@/lib/measure/deviation';
import type { Observation, Setup, Side } from '@/lib/measure/types';
import type { RoundVerdict } from '@/lib/assess/types';
import { CLIP, clipped, isDecided, type RoundContext, shownOf } from './context';

/** Heights of one setup at one station that is not a zero station. */
interface Hanging {
  setup: Setup;
  station: number;
  left: Observation | null;
  right: Observation | null;
}

/**
 * What gauges away from the zero stations show: left less right (`low-hanger`), the trend with the order of setups
 * (`drift-in-round`), the mean by gauge (`one-gauge`), and whether a height that was out was hung again (`no-rehang`).
 */
export function gatherHangings(context: RoundContext): void {
  const hangings = context.round.setups.flatMap(hangingsOf);
  gatherRehangs(context, hangings);
  if (!isDecided(context)) return;
  const settings = ordinary(hangings, context.verdict);
  const places = new Map<string, number>();
  for (const hanging of settings) {
    const { technician } = hanging.setup;
    const place = places.get(technician) ?? 0;
    places.set(technician, place + 1);
    gatherLean(context, hanging);
    gatherBias(context, hanging, place);
  }
  gatherDrift(context, settings);
}

/** Damage is taken out where it is likelier than not. */
const LIKELIER = 0.5;

/** Sides that more likely than not show damage, or a slip of known size, say little of how a hand sets as a rule. */
function ordinary(hangings: readonly Hanging[], verdict: RoundVerdict | null): Hanging[] {
  const leftOut = new Set(
    verdict?.heights
      .filter(({ p, signature }) => signature !== null || p.body + p.both > LIKELIER)
      .map(({ setup, point, side }) => `${setup}\n${point}\n${side}`),
  );
  return hangings.flatMap((hanging) => {
    const keep = (side: Side, seen: Observation | null): Observation | null =>
      seen === null || leftOut.has(`${hanging.setup.label}\n${seen.point}\n${side}`) ? null : seen;
    const left = keep('L', hanging.left);
    const right = keep('R', hanging.right);
    const { setup, station } = hanging;
    return left === null && right === null ? [] : [{ setup, station, left, right }];
  });
}

function hangingsOf(setup: Setup): Hanging[] {
  const byStation = new Map<number, Hanging>();
  for (const seen of setup.observations) {
    if (seen.quantity !== 'height' || seen.zero || seen.station === null || seen.side === null) continue;
    let hanging = byStation.get(seen.station);
    if (hanging === undefined) {
      hanging = { setup, station: seen.station, left: null, right: null };
      byStation.set(seen.station, hanging);
    }
    hanging[seen.side === 'L' ? 'left' : 'right'] = seen;
  }
  return [...byStation.values()];
}

const sidesOf = ({ left, right }: Hanging): Observation[] => [left, right].filter((side) => side !== null);

/** Mean of the sides that were read, each clipped. */
function levelOf(hanging: Hanging): number {
  const sides = sidesOf(hanging);
  return sides.reduce((sum, { deviation }) => sum + clipped(deviation, CLIP.height), 0) / sides.length;
}

function gatherLean(context: RoundContext, { setup, left, right }: Hanging): void {
  if (left === null || right === null) return;
  const sheaf = context.sheafOf(setup.technician);
  const lean = left.deviation - right.deviation;
  const counted = clipped(lean, CLIP.height);
  sheaf.look('low-hanger');
  sheaf.mean('low-hanger', 1, counted, setup.gauge);
  if (counted === lean && lean !== 0) {
    sheaf.show(`low-hanger:${lean < 0 ? 'left' : 'right'}`, shownOf(context, setup));
  }
}

function gatherBias(context: RoundContext, hanging: Hanging, place: number): void {
  const { setup } = hanging;
  const sheaf = context.sheafOf(setup.technician);
  sheaf.look('one-gauge');
  sheaf.mean('one-gauge', 1, levelOf(hanging), setup.gauge);
  const places = (sheaf.tally.places[setup.gauge] ??= { n: 0, x: 0 });
  places.n++;
  places.x += place;
  sheaf.show(`one-gauge:${setup.gauge}`, shownOf(context, setup));
}

/**
 * Slope of the deviations on the order in which this technician hung the gauges. A station that is hung again is
 * left out: it was chosen because it was out.
 */
function gatherDrift(context: RoundContext, hangings: readonly Hanging[]): void {
  const met = new Set<number>();
  const runs = new Map<string, Hanging[]>();
  for (const hanging of hangings) {
    if (met.has(hanging.station)) continue;
    met.add(hanging.station);
    const { technician } = hanging.setup;
    const run = runs.get(technician);
    if (run === undefined) runs.set(technician, [hanging]);
    else run.push(hanging);
  }
  for (const [technician, run] of runs) {
    if (run.length < 2) continue;
    const sheaf = context.sheafOf(technician);
    const middle = (run.length - 1) / 2;
    let cross = 0;
    let squares = 0;
    run.forEach((hanging, order) => {
      cross += (order - middle) * levelOf(hanging);
      squares += (order - middle) ** 2;
    });
    sheaf.look('drift-in-round', run.length);
    sheaf.mean('drift-in-round', squares, cross);
    const last = run.at(-1);
    if (last !== undefined && cross !== 0)
      sheaf.show(`drift-in-round:${cross > 0 ? 'up' : 'down'}`, shownOf(context, last.setup));
  }
}

/** Of the heights that were out when first hung: was the station hung again in the round, by whomever? */
function gatherRehangs(context: RoundContext, hangings: readonly Hanging[]): void {
  const byStation = new Map<number, Hanging[]>();
  for (const hanging of hangings) {
    const list = byStation.get(hanging.station);
    if (list === undefined) byStation.set(hanging.station, [hanging]);
    else list.push(hanging);
  }
  for (const [first, ...again] of byStation.values()) {
    if (first === undefined) continue;
    if (sidesOf(first).every(({ deviation, tolerance }) => isWithin(deviation, tolerance))) continue;
    const sheaf = context.sheafOf(first.setup.technician);
    const left = again.length === 0;
    sheaf.look('no-rehang');
    sheaf.mean('no-rehang', 1, left ? 1 : 0);
    if (left) sheaf.show('no-rehang', shownOf(context, first.setup));
  }
}
