import type { Change } from './change';
import type { Series, Signal, Subject } from './types';

export function subjectWords({ kind, name }: Subject): string {
  if (kind === 'shop' || name === null) return 'the shop';
  return `${kind} ${name}`;
}

const WHAT: Record<Series['what'], string> = {
  'right-first-time': 'Right first time',
  'setting-bias': 'Setting error (its mean)',
  'setting-scatter': 'Setting error (its scatter)',
};

/** What changed, when, from what to what, with the interval of the size. */
export function evidenceWords({ what, subject }: Series, noticed: string, change: Change | null): string {
  const head = `${WHAT[what]}, ${subjectWords(subject)}`;
  if (!change?.began) return `${head}: beyond its limit since ${noticed}; where it began cannot be told yet.`;
  const { period, low, high } = change.began;
  const between = low === high ? '' : ` (between ${low} and ${high})`;
  const until = change.since === null ? 'before' : `from ${change.since} until then`;
  return (
    `${head}: ${change.after} from ${period}${between} on, against ${change.before} ${until}; ` +
    `${sizeWords(change.size)}. Noticed in ${noticed}.`
  );
}

function sizeWords(size: Signal['size']): string {
  if (size === null) return 'the size of the change cannot be told yet';
  const { unit, value, low, high } = size;
  if (unit === 'rate') {
    const points = (rate: number) => Math.round(100 * rate);
    return `${points(value)} points (95 %: ${points(low)} to ${points(high)})`;
  }
  const digits = (number: number) => number.toFixed(2);
  if (unit === 'mm') return `a shift of ${digits(value)} mm (95 %: ${digits(low)} to ${digits(high)})`;
  return `${digits(value)} times the scatter (95 %: ${digits(low)} to ${digits(high)})`;
}

/** The one thing to do next. */
export function nextWords(what: Series['what'], subject: Subject, direction: Signal['direction']): string {
  const whom = subjectWords(subject);
  if (direction === 'better') {
    return `Find out what was changed for ${whom} about then, and keep it.`;
  }
  if (subject.kind === 'gauge') {
    return `Take ${whom} out of service until it is verified against the reference length.`;
  }
  if (what === 'right-first-time') {
    return `Open the jobs of ${whom} since then that were not right, and see which section, gauge or setup they share.`;
  }
  if (what === 'setting-bias') {
    return `Let ${whom} and another technician hang the same gauges on one vehicle and compare: the fixed mark first.`;
  }
  return `Let ${whom} hang one gauge five times on one vehicle, and look at how the hanger is set each time.`;
}
