import { z } from 'zod';
import { SIDES, STAGES } from '@/lib/measure';
import type { BatchReport } from '@/lib/reports';

/** The batch report as the README documents it. The types say that it is the same contract. */

const why = z.string().exactOptional().describe('Why a number beside it is null');
const mm = z.number().describe('Millimetres');
const probability = z.number().min(0).max(1);
const stage = z.enum(STAGES);
const attempt = z.int().min(1);

const sd = z.object({ sd_mm: mm.nullable(), low_mm: mm.nullable(), high_mm: mm.nullable(), why });
const mean = z.object({ mean_mm: mm.nullable(), low_mm: mm.nullable(), high_mm: mm.nullable(), why });
const rate = z.object({
  jobs: z.int(),
  right: z.int(),
  rate: probability.nullable(),
  low: probability.nullable(),
  high: probability.nullable(),
  why,
});

const technician = z.object({
  technician: z.string(),
  readings: z.int(),
  setups: z.int(),
  jobs: z.int(),
  repeatability: sd.extend({ df: z.number().nullable() }),
  setup: sd,
  bias: mean,
  first_time_right: rate.extend({ expected: z.number().nullable(), shrunk: probability.nullable() }),
  habits: z.array(
    z.object({
      habit: z.string(),
      strength: z.number(),
      evidence: z.string(),
      setups: z.array(z.string()).describe('job/setup'),
    }),
  ),
});

/** One height of one setup; the verdict is about the reading, never a clearance of the structure. */
export const height = z.object({
  job: z.string(),
  stage,
  attempt,
  setup: z.string(),
  gauge: z.string(),
  technician: z.string(),
  point: z.string(),
  side: z.enum(SIDES),
  station_mm: mm,
  zero: z.boolean(),
  deviation_mm: mm,
  p_neither: probability,
  p_gauge: probability,
  p_body: probability,
  p_both: probability,
  misset_mm: mm,
  body_mm: mm,
  signature: z.string().nullable(),
});

export const round = z.object({
  job: z.string(),
  stage,
  attempt,
  decidable: z.boolean(),
  why: z.string().nullable(),
  p_zero_misset: probability.nullable(),
  next_check: z
    .object({
      action: z.enum(['rehang', 'read-length', 'exchange', 'other-technician']),
      setup: z.string().nullable(),
      gain_bits: z.number(),
      point: z.string().exactOptional(),
      other: z.string().exactOptional(),
    })
    .nullable(),
});

export const report = z.object({
  technicians: z.array(technician),
  gauges: z.array(z.object({ gauge: z.string(), readings: z.int(), bias: mean })),
  heights: z.array(height),
  rounds: z.array(round),
  first_time_right: rate,
}) satisfies z.ZodType<BatchReport>;

/** Neither is there without the other. */
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;
true satisfies Same<z.infer<typeof report>, BatchReport>;
