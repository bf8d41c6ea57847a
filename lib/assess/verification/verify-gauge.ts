import { changePoint, collapse, conformity, slope, tInterval } from '@/lib/stats';
import { requireLevel, requirePositive } from '@/lib/stats/arguments';
import { chartOf } from './chart';
import type { CalledVerification, Estimated, GaugeEvent, GaugeVerdict, Verification } from './types';
import { notesOf, stateWords } from './words';

const DAY = 86_400_000;

export interface VerifyOptions {
  /** Half width of what the gauge may be off, mm. */
  limit: number;
  /** Probability of being within the limit that passes; as much of being outside fails. Default 0.95. */
  level?: number;
}

/**
 * Whether a gauge may hang: its verifications one by one, and what they show together.
 *
 * A verification passes where the true error is within the limit with at least `level`, fails where it is outside with at
 * least that, and is undecided between: then the state stays as it was and the gauge is to be read again. A gauge that
 * failed or was reported dropped is out of service until a verification after that passes. Drift is the slope of the errors
 * over time (least squares, t interval), a step the likeliest change of their mean; both since the last adjustment, and
 * both warn, they do not take out of service.
 * RangeError for a limit that is not above zero or values that are not numbers.
 * Sources: JCGM 106:2012, 7 and 8 (conformity, and what is neither); those of `slope`, `changePoint`, `individuals`, `ewma`.
 */
export function verifyGauge(
  gauge: string,
  verifications: readonly Verification[],
  events: readonly GaugeEvent[],
  { limit, level = 0.95 }: VerifyOptions,
): GaugeVerdict {
  requirePositive('The limit of a gauge', limit);
  requireLevel('The level of a verdict', level);
  const called = [...verifications]
    .sort((a, b) => a.at - b.at)
    .map((one): CalledVerification => {
      const { probability, nonconforming } = conformity({
        value: one.error,
        uncertainty: one.uncertainty,
        lower: -limit,
        upper: limit,
      });
      const call = probability >= level ? 'pass' : nonconforming >= level ? 'fail' : 'undecided';
      return { ...one, within: probability, call };
    });
  const adjusted = events
    .filter(({ kind }) => kind === 'adjusted')
    .reduce((last, { at }) => Math.max(last, at), -Infinity);
  const since = called.filter(({ at }) => at >= adjusted);
  const { state, cause } = stateOf(called, events);
  const [chart, drift, step] = [chartOf(since), driftOf(since), stepOf(since)];
  return {
    gauge,
    state,
    chart,
    drift,
    step,
    sentence: stateWords(gauge, state, cause, called.at(-1) ?? null, limit),
    verifications: called,
    notes: notesOf(drift, step, chart, since.at(-1) ?? null, limit),
  };
}

export type Cause = 'passed' | 'failed' | 'dropped' | 'adjusted' | 'undecided' | 'none';

/** The state after all that happened, in the order of time; of things at one moment an event comes before a verification. */
function stateOf(
  called: readonly CalledVerification[],
  events: readonly GaugeEvent[],
): { state: GaugeVerdict['state']; cause: Cause } {
  const story = [
    ...events.map(({ at, kind }) => ({ at, what: kind })),
    ...called.map(({ at, call }) => ({ at, what: call })),
  ].sort((a, b) => a.at - b.at);
  let state: GaugeVerdict['state'] = 'not verified';
  let cause: Cause = 'none';
  for (const { what } of story) {
    if (what === 'pass') [state, cause] = ['in service', 'passed'];
    else if (what === 'fail') [state, cause] = ['out of service', 'failed'];
    else if (what === 'dropped') [state, cause] = ['out of service', 'dropped'];
    else if (what === 'adjusted') [state, cause] = ['out of service', 'adjusted'];
    else if (state === 'not verified') cause = 'undecided';
  }
  return { state, cause };
}

function driftOf(verifications: readonly Verification[]): Estimated {
  const found = slope(
    verifications.map(({ at }) => at),
    verifications.map(({ error }) => error),
  );
  const per = (value: number | null) => (value === null ? null : value * 100 * DAY);
  return { value: per(found.slope), low: per(found.low), high: per(found.high), p: found.p, why: found.why };
}

function stepOf(verifications: readonly Verification[]): GaugeVerdict['step'] {
  const found = changePoint(verifications.map(({ error }) => error));
  const at = (place: number | null) => (place === null ? null : (verifications[place]?.at ?? null));
  const places = { at: at(found.at), from: at(found.low), to: at(found.high) };
  if (found.at === null || found.change === null) {
    return { value: null, low: null, high: null, p: null, why: found.why, ...places };
  }
  const interval = stepInterval(
    verifications.map(({ error }) => error),
    found.at,
  );
  return { value: found.change, ...interval, p: found.p, ...places };
}

/** Pooled t interval of the difference of the means, the place taken as known. */
function stepInterval(
  errors: readonly number[],
  at: number,
): { low: number | null; high: number | null; why: string | null } {
  const [before, after] = [collapse(errors.slice(0, at)), collapse(errors.slice(at))];
  const df = before.n + after.n - 2;
  const se = Math.sqrt(((before.ss + after.ss) / df) * (1 / before.n + 1 / after.n));
  return tInterval(after.mean - before.mean, se, df);
}
