import { roundName } from '@/app/_words/jobs';
import { briefMillimetres } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { TraceRow } from '@/lib/access';

/** What the trace holds are names, the same for all readers; what is unknown here is shown as it is held. */

const ENDED = /^ended (\d+) sessions$/;
const ROUND = /^round (before|after) (\d+)$/;

/** `changed`, `made a token`. */
export function actionWords(action: string): string {
  const t = words('settings');
  const n = ENDED.exec(action)?.[1];
  if (n !== undefined) return t('trace.ended', { n });
  return known('actions', action.replaceAll(' ', '-')) ?? action;
}

/** `job J1, setup B1-01, side L`; `job J1, Before, round 1`. */
export const subjectWords = (subject: string): string =>
  subject
    .split(', ')
    .map((part) => {
      const [, stage, attempt] = ROUND.exec(part) ?? [];
      if (stage === 'before' || stage === 'after') return roundName(stage, Number(attempt));
      const [what = ''] = part.split(' ', 1);
      const word = known('subjects', what);
      return word === null ? part : word + part.slice(what.length);
    })
    .join(', ');

/** Values that are lengths in millimetres, and values that are times, epoch milliseconds. */
const LENGTHS: readonly string[] = ['value', 'clearance', 'error', 'uncertainty', 'kept', 'second'];
const TIMES: readonly string[] = ['at', 'expiresAt'];
/** A fingerprint is told by its beginning: nobody reads on, and its line would push all others aside. */
const FINGERPRINT = /^[0-9a-f]{64}$/;

/** `value 351.5 mm, excluded no`. */
export function valueWords(of: TraceRow['before'], timeZone: string): string {
  if (of === null) return '';
  return Object.entries(of)
    .map(([name, value]) => `${known('values', name) ?? name} ${said(name, value, timeZone)}`)
    .join(', ');
}

function said(name: string, value: unknown, timeZone: string): string {
  if (typeof value === 'number' && LENGTHS.includes(name)) return briefMillimetres(value);
  if (typeof value === 'number' && TIMES.includes(name)) return dayAndTime(value, timeZone);
  if (typeof value === 'string') return FINGERPRINT.test(value) ? `${value.slice(0, 16)}…` : value;
  return plain(value);
}

function plain(value: unknown): string {
  if (typeof value === 'boolean' || value === null)
    return words('settings')(`trace.plain.${value ?? 'none'}`);
  return JSON.stringify(value);
}

function known(group: 'actions' | 'subjects' | 'values', name: string): string | null {
  const t = words('settings') as unknown as { has: (key: string) => boolean; raw: (key: string) => string };
  const key = `trace.${group}.${name}`;
  return /^[\w-]+$/.test(name) && t.has(key) ? t.raw(key) : null;
}
