import type { EntryBody } from '@/lib/bay';
import { bodyOf, entryColumns, hasNoSuchHand, type EntryRow } from '@/lib/store/bay/entry-row';
import type { TakenIn, Taking } from './taking';

export type Hanging = Extract<EntryBody, { kind: 'hang' }>;

/** A hanging as it was entered. */
export interface Hung extends Hanging {
  /** Code of whose hand. */
  technician: string;
  /** Code of who entered it. */
  by: string;
  /** Why it was not taken, or null. */
  conflict: string | null;
  noSuchHand: boolean;
}

/** Keeps that a gauge was hung. Its setup is stored with its first reading. */
export async function takeHanging(taking: Taking, body: Hanging): Promise<TakenIn> {
  const { queries, shop, by, forOthers } = taking;
  const named = body.hand === null || body.hand === by ? null : body.hand;
  const hand =
    named === null
      ? null
      : await queries.person.findUnique({
          where: { shopId_code: { shopId: shop, code: named } },
          select: { id: true, removedAt: true },
        });
  const noSuchHand = named !== null && (hand === null || hand.removedAt !== null);
  const kept = { handId: noSuchHand ? null : (hand?.id ?? null), noSuchHand };
  if (named !== null && !forOthers) return { conflict: NOT_FOR_OTHERS, ...kept };
  if (noSuchHand) return { conflict: NO_SUCH_HAND, ...kept };
  const conflict = (await labelConflict(taking, body, named ?? by)) ?? (await kindConflict(taking, body));
  return { conflict, ...kept };
}

const NOT_FOR_OTHERS = 'Only a trainer or a manager enters for another hand.';
const NO_SUCH_HAND = 'The hand that was named is nobody of this shop. Hang the gauge again.';

/** The same hanging may be told again; a label that stands for another one cannot be given twice. */
async function labelConflict(taking: Taking, body: Hanging, technician: string): Promise<string | null> {
  const { queries, shop, round } = taking;
  const there = await hungAs(taking, body.setup);
  if (there !== null && there.conflict === null)
    return there.place === body.place && there.gauge === body.gauge && there.technician === technician
      ? null
      : `Setup ${body.setup} was hung already, by another hand, with another gauge or at another place.`;
  const stored = await queries.job.findUnique({
    where: { shopId_number: { shopId: shop, number: round.job } },
    select: { setups: { where: { label: body.setup }, select: { id: true } } },
  });
  return stored === null || stored.setups.length === 0
    ? null
    : `Setup ${body.setup} stands for another hanging in job ${round.job}. Hang the gauge again.`;
}

async function kindConflict(
  { queries, shop }: Taking,
  { gauge: tag, gaugeKind }: Hanging,
): Promise<string | null> {
  const gauge = await queries.gauge.findUnique({
    where: { shopId_tag: { shopId: shop, tag } },
    select: { kind: true },
  });
  if (gauge === null || gauge.kind === null || gauge.kind === gaugeKind) return null;
  return `Gauge ${tag} is known as ${gauge.kind}, not as ${gaugeKind}. See which gauge hangs there, and hang it again.`;
}

/** The hanging of a label in this round: the one that was taken, else the first that was not; null where there is none. */
export async function hungAs({ queries, round }: Taking, label: string): Promise<Hung | null> {
  const rows = await queries.bayEntry.findMany({
    where: { bayRoundId: round.id, kind: 'hang' },
    select: entryColumns,
    orderBy: { id: 'asc' },
  });
  const all = rows.flatMap((row) => hungOf(row)).filter(({ setup }) => setup === label);
  return all.find(({ conflict }) => conflict === null) ?? all[0] ?? null;
}

function hungOf(row: EntryRow): Hung[] {
  const body = bodyOf(row);
  if (body.kind !== 'hang') return [];
  const { person, conflict, document } = row;
  const [by, technician] = [person.code, body.hand ?? person.code];
  return [{ ...body, technician, by, conflict, noSuchHand: hasNoSuchHand(document) }];
}

/** Why a hanging that was not taken still cannot be, asked by whoever settles what was read in it. */
export async function stillRefused(taking: Taking, hung: Hung): Promise<string | null> {
  if (hung.conflict === null) return null;
  if (hung.noSuchHand) return NO_SUCH_HAND;
  if (hung.technician !== hung.by && !taking.forOthers) return NOT_FOR_OTHERS;
  return kindConflict(taking, hung);
}
