import type { CalledVerification, Estimated, GaugeVerdict, Verification } from './types';
import type { Cause } from './verify-gauge';

const FALSE_CALLS = 0.05;

/** The state of a gauge, why, and what to do. */
export function stateWords(
  gauge: string,
  state: GaugeVerdict['state'],
  cause: Cause,
  last: CalledVerification | null,
  limit: number,
): string {
  const shown = last === null ? '' : ` ${lastWords(last, limit)}`;
  if (state === 'in service') {
    const again = last?.call === 'undecided' ? ' The last verification decides nothing: read it again.' : '';
    return `Gauge ${gauge} is in service.${shown}${again}`;
  }
  if (state === 'not verified') {
    const why =
      cause === 'undecided'
        ? 'its verification decides nothing: read it again'
        : 'nothing is known of its error';
    return `Gauge ${gauge} was never verified; ${why}.${shown}`;
  }
  const why: Record<Cause, string> = {
    failed: 'it failed its verification',
    dropped: 'it was reported dropped or bent',
    adjusted: 'it was adjusted',
    passed: '',
    undecided: '',
    none: '',
  };
  return `Gauge ${gauge} is out of service until verified: ${why[cause]}.${shown}`;
}

function lastWords({ error, uncertainty, within }: CalledVerification, limit: number): string {
  return (
    `It was last ${signed(error)} off (± ${(2 * uncertainty).toFixed(2)} mm); ` +
    `that its error is within ± ${limit} mm has a probability of ${probability(within)}.`
  );
}

export function notesOf(
  drift: Estimated,
  step: GaugeVerdict['step'],
  chart: GaugeVerdict['chart'],
  last: Verification | null,
  limit: number,
): string[] {
  const notes: string[] = [];
  const stepped = step.p !== null && step.p <= FALSE_CALLS && step.value !== null;
  if (stepped) {
    notes.push(`It stepped by ${withLimits(step)} between verifications: ask what happened to it then.`);
  }
  if (drift.p !== null && drift.p <= FALSE_CALLS && drift.value !== null) {
    const other = stepped ? ' (a step can look like a drift)' : '';
    notes.push(`It drifts by ${withLimits(drift)} in 100 days${other}${limitWords(drift, last, limit)}.`);
  }
  if (chart.alarms.length > 0 && notes.length === 0) {
    notes.push('A verification lies beyond the limits of its chart: verify again before relying on it.');
  }
  return notes;
}

/** When the drift reaches the limit, by the steepest slope of its interval. */
function limitWords(drift: Estimated, last: Verification | null, limit: number): string {
  if (last === null || drift.value === null || drift.low === null || drift.high === null) return '';
  const steepest = drift.value > 0 ? drift.high : drift.low;
  const left = limit - Math.sign(drift.value) * last.error;
  if (!(left > 0)) return '';
  const days = Math.round((100 * left) / Math.abs(steepest));
  return `; at the steepest it reaches ± ${limit} mm in ${days} days: verify before that`;
}

const signed = (mm: number): string => `${mm > 0 ? '+' : ''}${mm.toFixed(2)} mm`;

function withLimits({ value, low, high }: Estimated): string {
  const limits = low === null || high === null ? '' : ` (${low.toFixed(2)} to ${high.toFixed(2)})`;
  return `${signed(value ?? 0)}${limits}`;
}

const probability = (p: number): string =>
  p > 0.995 ? 'more than 0.99' : p < 0.005 ? 'less than 0.01' : p.toFixed(2);
