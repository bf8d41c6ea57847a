import { DateTime } from 'luxon';
import { z } from 'zod';
import type { Query } from '@/app/_words/address';
import { asked } from '@/app/_words/asked';
import { SECTIONS, STAGES } from '@/lib/measure';
import { JOB_SORTS, OUTCOMES, type JobQuery } from '@/lib/access';
import { words } from '@/app/_words/words';

export const PAGE_SIZE = 50;

const date = z.iso.date();
const name = z.string().max(100);

const schemas = {
  search: name,
  sheet: name,
  technician: name,
  stage: z.enum(STAGES),
  section: z.enum(SECTIONS),
  outcome: z.enum(OUTCOMES),
  from: date,
  to: date,
  sort: z.enum(JOB_SORTS),
  direction: z.enum(['asc', 'desc']),
  page: z.coerce.number().int().min(1).max(1_000_000),
} as const;

type Name = keyof typeof schemas;
export type Question = { [N in Name]?: z.infer<(typeof schemas)[N]> | undefined };

/** Values as the address has them, the same in every language. */
const VALUES: Partial<Record<Name, readonly string[]>> = {
  stage: STAGES,
  section: SECTIONS,
  outcome: OUTCOMES,
  sort: JOB_SORTS,
  direction: ['asc', 'desc'],
};

function wanted(part: Name): string {
  const t = words('jobList');
  const values = VALUES[part];
  if (values !== undefined) return t(values.length === 2 ? 'wanted.oneOfTwo' : 'wanted.oneOf', named(values));
  if (part === 'page') return t('wanted.page');
  return t(part === 'from' || part === 'to' ? 'wanted.date' : 'wanted.name');
}

const named = (values: readonly string[]) => ({
  values: values.join(', '),
  first: values[0] ?? '',
  second: values[1] ?? '',
});

/**
 * What the address asks of the list of jobs. A part that cannot be understood is left out, and a sentence says so:
 * a mistyped address shows more jobs than meant, never an error.
 */
export function questionFrom(query: Query): { question: Question; notes: string[] } {
  const { read: readAs, notes } = asked<Name>(query, (text, part) =>
    words('jobList')('notUnderstood', { text, part, wanted: wanted(part) }),
  );
  const read = <N extends Name>(part: N): Question[N] => readAs<unknown>(part, schemas[part]) as Question[N];
  const question: Question = {
    search: read('search'),
    sheet: read('sheet'),
    technician: read('technician'),
    stage: read('stage'),
    section: read('section'),
    outcome: read('outcome'),
    from: read('from'),
    to: read('to'),
    sort: read('sort'),
    direction: read('direction'),
    page: read('page'),
  };
  return { question, notes };
}

/** The same in the store's terms: days become times in the shop's zone, the last day included. */
export function jobQuery(question: Question, timeZone: string): JobQuery {
  const start = (day: string | undefined, plus = 0) =>
    day === undefined ? undefined : DateTime.fromISO(day, { zone: timeZone }).plus({ days: plus }).toMillis();
  return {
    search: question.search,
    sheet: question.sheet,
    technician: question.technician,
    stage: question.stage,
    section: question.section,
    outcome: question.outcome,
    from: start(question.from),
    to: start(question.to, 1),
    sort: question.sort ?? 'opened',
    direction: question.direction ?? (question.sort === undefined ? 'desc' : 'asc'),
    page: question.page ?? 1,
    pageSize: PAGE_SIZE,
  };
}
