import { z } from 'zod';
import { height, round } from './report';

const time = z.iso.datetime().describe('UTC');

/** What a measurement file was found to hold, and what of it was stored. */
export const taken = z.object({
  dry_run: z.boolean().describe('Nothing was stored'),
  file: z.object({
    name: z.string(),
    bytes: z.int(),
    sha256: z.string(),
    readings: z.int(),
    jobs: z.int(),
    rounds: z.int(),
    setups: z.int(),
    from: time.nullable(),
    to: time.nullable(),
    ignored_columns: z.array(z.string()),
    notes: z.array(z.string()),
  }),
  stored: z
    .object({
      added: z.int().describe('Readings that are new'),
      already_there: z.int(),
      causes: z.int().describe('Proved causes that are new'),
      jobs: z.array(z.string()).describe('Jobs that changed'),
      new_jobs: z.int(),
      new_setups: z.int(),
      new_sheets: z.int(),
      new_people: z.array(z.string()),
      new_gauges: z.array(z.string()),
    })
    .nullable()
    .describe('Null after a dry run'),
});

export const fault = z.object({
  line: z.int().nullable().describe('The header is line 1; null where it is the whole file'),
  column: z.string().nullable(),
  reason: z.string(),
});

/** RFC 9457. */
export const problem = z.object({
  type: z.literal('about:blank'),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
});

export const refusedFile = problem.extend({
  faults: z.array(fault).describe('Of every faulty line; at most 10,000'),
  fault_count: z.int(),
});

export const job = z.object({
  job: z.string(),
  sheet: z.string().nullable(),
  right_first_time: z.boolean().nullable().describe('Null where there is no first round after the repair'),
  rounds: z.array(
    z.object({
      stage: round.shape.stage,
      attempt: round.shape.attempt,
      clearance_mm: z.number(),
      setups: z.array(
        z.object({ setup: z.string(), technician: z.string(), gauge: z.string(), hung_at: time }),
      ),
      verdict: round
        .omit({ job: true, stage: true, attempt: true })
        .extend({ heights: z.array(height.omit({ job: true, stage: true, attempt: true })) })
        .nullable()
        .describe('Null until the figures have followed the readings. About readings, never a clearance.'),
    }),
  ),
});

export const scheduledReport = z.object({
  id: z.int(),
  due_at: time,
  started_at: time,
  done_at: time.nullable(),
  failed: z.string().nullable().describe('Why there is none'),
});

export const scheduledReports = z.object({ reports: z.array(scheduledReport) });
