import { z } from 'zod';
import { GAUGE_KINDS, QUANTITIES, SIDES } from '@/lib/measure/types';
import { EQUIPMENT_CHECKS, STEPS, type Entry, type EntryBody } from './entry';

/** No length on a vehicle is longer than a hundred metres. */
const millimetres = z.number().min(-100_000).max(100_000);

/** What cannot be printed becomes a space: no database takes all of it, and nothing that was entered is refused for it. */
const printable = (text: string): string =>
  text
    .replace(/[\p{Cc}\u2028\u2029]/gu, ' ')
    .replace(/\p{Cs}/gu, '\ufffd')
    .normalize('NFC')
    .trim();
const text = (least: number, most: number) =>
  z.string().transform(printable).pipe(z.string().min(least).max(most));

const name = text(1, 60);
const reason = text(1, 500);
const dimension = z.object({
  quantity: z.enum(QUANTITIES),
  point: name,
  side: z.enum(SIDES).nullable(),
  nominal: millimetres,
});
const repeat = z.int().min(1).max(99);
const place = text(1, 200);

export const entryBodySchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('equipment'),
    check: z.enum(EQUIPMENT_CHECKS),
    ok: z.boolean(),
    note: text(0, 500).nullable(),
  }),
  z.object({
    kind: z.literal('hang'),
    setup: name,
    place,
    gauge: name,
    gaugeKind: z.enum(GAUGE_KINDS),
    hand: name.nullable(),
  }),
  z.object({ kind: z.literal('read'), setup: name, dimension, repeat, value: millimetres }),
  z.object({
    kind: z.literal('correct'),
    setup: name,
    dimension,
    repeat,
    from: millimetres,
    value: millimetres,
    reason,
  }),
  z.object({ kind: z.literal('skip'), step: z.enum(STEPS), place: place.nullable(), reason }),
  z.object({ kind: z.literal('resume'), step: z.enum(STEPS), place: place.nullable() }),
  z.object({ kind: z.literal('settle'), key: z.uuid(), keep: z.enum(['first', 'second']), reason }),
  z.object({ kind: z.literal('finish') }),
]) satisfies z.ZodType<EntryBody>;

export const entrySchema = z.object({
  key: z.uuid(),
  device: z.string().regex(/^[a-z0-9]{2,8}$/),
  sequence: z.int().min(1).max(100_000),
  at: z.int().min(0).max(8_640_000_000_000_000),
  body: entryBodySchema,
}) satisfies z.ZodType<Entry>;
