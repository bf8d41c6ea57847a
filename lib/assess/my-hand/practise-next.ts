import type { Hand, PlaceFigure } from './types';
import { requireTolerance } from './share-of-tolerance';

export interface Practice {
  what: 'bias' | 'place' | 'setting' | 'reading' | 'nothing' | 'unknown';
  sentence: string;
}

/**
 * What to practise next, in one sentence, from what makes most of this hand's mean square error and is beyond chance:
 * a bias (its interval leaves out 0), a place where the setting scatters more than elsewhere, else the larger of setting
 * and reading; nothing where both together, expanded (k = 2), are within a third of the tolerance.
 */
export function practiseNext(hand: Hand, places: readonly PlaceFigure[], tolerance: number): Practice {
  requireTolerance(tolerance);
  const { repeatability, setting, bias } = hand;
  const [r, s] = [repeatability.sd, setting.sd];
  if (r === null || s === null) {
    const why = repeatability.why ?? setting.why ?? 'This hand is not known yet.';
    return {
      what: 'unknown',
      sentence: `${why} Read every dimension twice and hang one gauge again in each job, then this can be told.`,
    };
  }
  const known = bias.mean !== null && bias.low !== null && bias.high !== null;
  const shifted = known && (Number(bias.low) > 0 || Number(bias.high) < 0) ? Math.abs(bias.mean ?? 0) : 0;
  if (shifted > Math.max(r, s)) {
    const high = (bias.mean ?? 0) > 0;
    const side = high ? 'high' : 'low';
    const [from, to] = high ? [bias.low, bias.high] : [-(bias.high ?? 0), -(bias.low ?? 0)];
    return {
      what: 'bias',
      sentence:
        `Practise reading to the fixed mark: your heights come out ${mm(shifted)} too ${side} ` +
        `(${mm(from)} to ${mm(to)}), more than the setting (${mm(s)}) or the reading (${mm(r)}) scatters.`,
    };
  }
  if (2 * Math.hypot(r, s, shifted) <= tolerance / 3) {
    return {
      what: 'nothing',
      sentence: `Nothing needs practice: ± ${mm(2 * Math.hypot(r, s))} is within a third of the tolerance. Keep hanging again what is out.`,
    };
  }
  const unsure = places.filter(({ lessSure }) => lessSure);
  const worst = unsure.reduce<PlaceFigure | null>(
    (most, one) => ((one.low ?? 0) > (most?.low ?? 0) ? one : most),
    null,
  );
  if (worst && s >= r) {
    return {
      what: 'place',
      sentence:
        `Practise setting at ${worst.name}: there it scatters ${(worst.ratio ?? 0).toFixed(1)} times as much as elsewhere ` +
        `(${(worst.low ?? 0).toFixed(1)} to ${(worst.high ?? 0).toFixed(1)}; ${worst.setups} settings).`,
    };
  }
  if (s >= r) {
    return {
      what: 'setting',
      sentence:
        `Practise setting and hanging: it scatters ${mm(s)} (${mm(setting.low)} to ${mm(setting.high)}), ` +
        `the reading only ${mm(r)}; hang one gauge five times and read it each time.`,
    };
  }
  return {
    what: 'reading',
    sentence:
      `Practise reading: it scatters ${mm(r)} (${mm(repeatability.low)} to ${mm(repeatability.high)}), ` +
      `the setting ${mm(s)}; read one hung gauge ten times without looking at the last value.`,
  };
}

const mm = (value: number | null): string => (value === null ? 'not known' : `${value.toFixed(2)} mm`);
