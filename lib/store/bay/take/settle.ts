import type { EntryBody } from '@/lib/bay';
import { bodyOf, entryColumns } from '@/lib/store/bay/entry-row';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import { stillRefused } from './hang';
import { addReading, correct, EXCLUDED, placeOf } from './read';
import type { Taking } from './taking';

type Settling = Extract<EntryBody, { kind: 'settle' }>;
type Reading = Extract<EntryBody, { kind: 'read' | 'correct' }>;

/**
 * Of two values for one reading keeps the first, or puts the second in its place with the reason. Where only the
 * second exists it is taken now, if what stood against it was mended.
 * @returns why that cannot be, or null.
 */
export async function settle(taking: Taking, { key, keep, reason }: Settling): Promise<string | null> {
  const { queries, round } = taking;
  const row = await queries.bayEntry.findUnique({
    where: { bayRoundId_key: { bayRoundId: round.id, key } },
    select: entryColumns,
  });
  const body = row && bodyOf(row);
  if (row?.conflict == null || body === null || (body.kind !== 'read' && body.kind !== 'correct'))
    return 'There is no contradiction of this reading to settle.';
  if (await isSettled(taking, key)) return 'This contradiction was settled already.';
  const refused = keep === 'first' ? null : await takeSecond(taking, body, row.at.getTime(), reason);
  if (refused !== null) return refused;
  await tell(taking, body, { keep, reason });
  return null;
}

async function isSettled({ queries, round }: Taking, key: string): Promise<boolean> {
  const rows = await queries.bayEntry.findMany({
    where: { bayRoundId: round.id, kind: 'settle', conflict: null },
    select: entryColumns,
  });
  return rows.map(bodyOf).some((body) => body.kind === 'settle' && body.key === key);
}

async function takeSecond(taking: Taking, body: Reading, at: number, reason: string): Promise<string | null> {
  const place = await placeOf(taking, body);
  if (typeof place === 'string') return place;
  const { hung, dimension, standing } = place;
  const refused = await stillRefused(taking, hung);
  if (refused !== null) return refused;
  if (standing === null) return addReading(taking, hung, dimension, { ...body, at });
  if (standing.excluded) return EXCLUDED;
  return standing.value === body.value ? null : correct(taking, dimension, { ...body, reason });
}

async function tell(
  { queries, shop, round, actor }: Taking,
  { setup, dimension, repeat, value }: Reading,
  { keep, reason }: Pick<Settling, 'keep' | 'reason'>,
): Promise<void> {
  const { quantity, point, side } = dimension;
  const name = side === null ? `${quantity} ${point}` : `${quantity} ${point} ${side}`;
  await writeTrace(queries, shop, actor, {
    action: 'settled',
    kind: 'bay round',
    subject: subjectOf.reading(round.job, setup, name, repeat),
    after: { kept: keep, second: value },
    reason,
  });
}
