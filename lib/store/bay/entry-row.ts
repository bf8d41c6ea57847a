import type { Entry, EntryBody, KeptEntry } from '@/lib/bay';
import { entryBodySchema } from '@/lib/bay/entry-schema';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Json } from '@/lib/store/types';

const code = { select: { code: true } } as const;

export const entryColumns = {
  id: true,
  key: true,
  device: true,
  sequence: true,
  at: true,
  conflict: true,
  document: true,
  person: code,
  hand: code,
} as const satisfies Prisma.BayEntrySelect;

export type EntryRow = Prisma.BayEntryGetPayload<{ select: typeof entryColumns }>;

/** An entry as its row holds it: whose hand it was stands beside the document, so that a document names nobody. */
export function keptEntry({ id, key, device, sequence, at, conflict, ...row }: EntryRow): KeptEntry {
  return {
    id,
    key,
    device,
    sequence,
    conflict,
    at: at.getTime(),
    by: row.person.code,
    body: bodyOf(row),
  };
}

/** What was entered, as this program stored it. */
export function bodyOf({ document, hand }: Pick<EntryRow, 'document' | 'hand'>): EntryBody {
  const body = entryBodySchema.parse(document);
  return body.kind === 'hang' ? { ...body, hand: hand?.code ?? null } : body;
}

/** Of a hanging whose hand is nobody of the shop: it is not to count to whoever entered it. */
const NO_SUCH_HAND = 'noSuchHand';

export function documentOf({ body }: Pick<Entry, 'body'>, noSuchHand: boolean): Record<string, Json> {
  const document: Record<string, unknown> = {
    ...body,
    ...(body.kind === 'hang' && { hand: null }),
    ...(noSuchHand && { [NO_SUCH_HAND]: true }),
  };
  // An entry is plain data throughout.
  return document as Record<string, Json>;
}

export const hasNoSuchHand = (document: EntryRow['document']): boolean =>
  typeof document === 'object' && document !== null && NO_SUCH_HAND in document;
