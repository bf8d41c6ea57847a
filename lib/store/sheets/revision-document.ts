import { z } from 'zod';
import { QUANTITIES, SECTIONS, SIDES } from '@/lib/measure/types';
import type { SheetContent } from '@/lib/measure/sheet';
import { SHEET_ORIGINS, type Json, type SheetOrigin } from '@/lib/store/types';

/** Grows when the shape of the document changes. */
const FORMAT = 1;

const section = z.enum(SECTIONS).nullable();
const side = z.enum(SIDES).nullable();
const station = z.number().nullable();

/** A whole sheet as one revision keeps it. */
const document = z.object({
  format: z.literal(FORMAT),
  origin: z.enum(SHEET_ORIGINS),
  copiedFrom: z.string().nullable(),
  points: z.array(
    z.object({
      letter: z.string(),
      side,
      description: z.string().nullable(),
      feature: z.string().nullable(),
      section,
      station,
      zero: z.boolean(),
      halfWidth: z.number().nullable(),
    }),
  ),
  dimensions: z.array(
    z.object({
      quantity: z.enum(QUANTITIES),
      point: z.string(),
      side,
      section,
      station,
      zero: z.boolean(),
      nominal: z.number(),
      tolerance: z.number(),
    }),
  ),
});

export type RevisionDocument = z.infer<typeof document>;

export const revisionDocument = (
  { points, dimensions }: SheetContent,
  origin: SheetOrigin,
  copiedFrom: string | null = null,
): RevisionDocument => ({
  format: FORMAT,
  origin,
  copiedFrom,
  // Column by column, so that nothing else that a caller's rows hold is kept for good.
  points: points.map((point) => document.shape.points.element.parse(point)),
  dimensions: dimensions.map((one) => document.shape.dimensions.element.parse(one)),
});

export const parseRevision = (json: unknown): RevisionDocument => document.parse(json);

export const asJson = (of: RevisionDocument) => of as unknown as { [key: string]: Json };
