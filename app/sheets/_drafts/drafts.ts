import { writeFile } from 'node:fs/promises';
import { z } from 'zod';
import { openStaging, stagedBytes } from '@/app/load/_staging/staging';
import { UNITS } from '@/app/_words/speech';
import type { Viewer } from '@/lib/access';
import { LENGTH_COLUMNS, POINT_COLUMNS, type TypedLength, type TypedPoint } from '@/lib/measure/sheet';

const row = <Row extends Record<string, string>>(columns: readonly (keyof Row & string)[]) =>
  z.object(Object.fromEntries(columns.map((column) => [column, z.string()]))).transform((one) => one as Row);

/** A sheet as somebody typed it, while it is being checked: it waits for a day where uploaded files wait. */
const draft = z.object({
  /** Whose it is: nobody else gets to see it. */
  shop: z.number(),
  by: z.string(),
  /** The sheet that it corrects and the revision it began from, or null. */
  of: z.string().nullable(),
  revision: z.number(),
  units: z.enum(UNITS),
  name: z.string(),
  reason: z.string(),
  origin: z.enum(['entered', 'loaded']),
  typed: z.object({
    points: z.array(row<TypedPoint>(POINT_COLUMNS)),
    lengths: z.array(row<TypedLength>(LENGTH_COLUMNS)),
  }),
  /** Of a file that could not be read. */
  faults: z.array(
    z.object({
      line: z.number().nullable(),
      column: z.string().nullable(),
      message: z.string(),
      value: z.string().nullable(),
    }),
  ),
});

export type Draft = Omit<z.infer<typeof draft>, 'shop' | 'by'>;

/** @returns by which it is found again. */
export async function keepDraft(viewer: Viewer, one: Draft): Promise<string> {
  const { id, path } = await openStaging();
  await writeFile(path, JSON.stringify({ ...one, shop: viewer.shop.id, by: viewer.code }), { mode: 0o600 });
  return id;
}

const draftId = z.uuid();

/** Null where there is none of this name, or it is somebody else's. */
export async function readDraft(viewer: Viewer, id: string | undefined): Promise<Draft | null> {
  const known = draftId.safeParse(id);
  if (!known.success) return null;
  const pieces: Uint8Array[] = [];
  try {
    for await (const piece of stagedBytes(known.data)) pieces.push(piece);
  } catch {
    // Swept away, or never there.
    return null;
  }
  const found = draft.safeParse(jsonIn(Buffer.concat(pieces).toString('utf8')));
  if (!found.success || found.data.shop !== viewer.shop.id || found.data.by !== viewer.code) return null;
  const { shop: _, by: __, ...one } = found.data;
  return one;
}

/** What waits under the name may be an uploaded file. */
function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
