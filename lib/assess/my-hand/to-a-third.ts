import type { Hand } from './types';
import { requireTolerance } from './share-of-tolerance';

/** More readings or hangings than this are nobody's work. */
const MOST = 20;

export interface ToAThird {
  /** The standard uncertainty to come below, mm: expanded (k = 2) it is a third of the tolerance. */
  goal: number;
  /** Of one hanging read `readings` times, as it is now. */
  now: number | null;
  /** Readings in one hanging that reach the goal; null where none do, or the hand is not known. */
  readings: number | null;
  /** Hangings, each read as often as now, whose mean reaches it. */
  hangings: number | null;
  /** The same by the upper limits of the hand's sds: what is enough even if they are that large. */
  surely: { readings: number | null; hangings: number | null };
  /** One or two sentences: what is enough, or that readings cannot do it, and why. */
  sentence: string;
}

/**
 * How many readings, or hangings, bring the expanded uncertainty (k = 2) of a height below a third of its tolerance.
 *
 * u² = setting²/m + reading²/(m n), m hangings of n readings. Reading again leaves the setting as it is, so readings alone
 * reach the goal only where the setting is below it. A bias is the same in every hanging of one hand and is not in u.
 * Source: JCGM 100:2008 (GUM), 5.1.2 and 6.2.1; the third is the trade's and ISO 14253's rule of thumb (from memory).
 */
export function toAThird(
  { repeatability, setting, bias }: Hand,
  tolerance: number,
  readings: number,
): ToAThird {
  requireTolerance(tolerance);
  if (!(readings >= 1)) throw new RangeError(`A hanging has at least one reading, not ${readings}.`);
  const goal = tolerance / 6;
  const [r, s] = [repeatability.sd, setting.sd];
  if (r === null || s === null) {
    const sentence = repeatability.why ?? setting.why ?? 'This hand is not known yet.';
    const nothing = { readings: null, hangings: null };
    return { goal, now: null, ...nothing, surely: nothing, sentence };
  }
  const enough = (reading: number, hanging: number) => ({
    readings: readingsFor(goal, reading, hanging),
    hangings: hangingsFor(goal, reading, hanging, readings),
  });
  const found = enough(r, s);
  const surely =
    repeatability.high === null || setting.high === null
      ? { readings: null, hangings: null }
      : enough(repeatability.high, setting.high);
  const now = Math.sqrt(s * s + (r * r) / readings);
  return {
    goal,
    now,
    ...found,
    surely,
    sentence: sentence(goal, now, s, found, surely, readings) + biasWords(bias, goal),
  };
}

function readingsFor(goal: number, reading: number, setting: number): number | null {
  const left = goal * goal - setting * setting;
  if (!(left > 0)) return null;
  const n = Math.max(1, Math.ceil((reading * reading) / left - 1e-9));
  return n > MOST ? null : n;
}

function hangingsFor(goal: number, reading: number, setting: number, readings: number): number | null {
  const m = Math.max(
    1,
    Math.ceil((setting * setting + (reading * reading) / readings) / (goal * goal) - 1e-9),
  );
  return m > MOST ? null : m;
}

function sentence(
  goal: number,
  now: number,
  setting: number,
  found: { readings: number | null; hangings: number | null },
  surely: { readings: number | null; hangings: number | null },
  readings: number,
): string {
  const mm = (value: number) => `${value.toFixed(2)} mm`;
  if (now <= goal) {
    return `One hanging read ${times(readings)} is enough: ± ${mm(2 * now)} is within a third of the tolerance, ± ${mm(2 * goal)}.`;
  }
  const least = `${mm(2 * goal)} is a third of the tolerance`;
  if (found.readings !== null) {
    const safe =
      surely.readings === null || surely.readings === found.readings ? '' : `, ${surely.readings} to be sure`;
    return `Read ${times(found.readings)} in one hanging${safe}: ± ${least}.`;
  }
  const why =
    setting >= goal
      ? `the setting alone is ± ${mm(2 * setting)}, and it is the same in every reading of a hanging`
      : `it would take more than ${MOST} readings`;
  if (found.hangings === null) {
    return `Readings cannot do it: ${why}. More than ${MOST} hangings would be needed: practise setting first.`;
  }
  const safe =
    surely.hangings === null || surely.hangings === found.hangings ? '' : ` (${surely.hangings} to be sure)`;
  return `Readings alone cannot do it: ${why}. The mean of ${found.hangings} hangings${safe} can: ± ${least}.`;
}

const times = (n: number): string => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`);

function biasWords({ mean, low, high }: Hand['bias'], goal: number): string {
  if (mean === null || low === null || high === null || (low <= 0 && high >= 0)) return '';
  if (Math.abs(mean) < goal / 2) return '';
  return ` A bias of ${mean.toFixed(2)} mm (${low.toFixed(2)} to ${high.toFixed(2)}) stays in all of them: no repeat of the same hand shows it.`;
}
