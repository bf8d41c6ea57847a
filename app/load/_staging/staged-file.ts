import { z } from 'zod';
import { faultGroup } from './fault-groups';

const summary = z.object({
  name: z.string(),
  bytes: z.number(),
  lines: z.number(),
  readings: z.number(),
  separator: z.enum(['comma', 'semicolon', 'tab']),
  decimalComma: z.boolean(),
  jobs: z.number(),
  rounds: z.number(),
  setups: z.number(),
  technicians: z.array(z.string()),
  gauges: z.array(z.string()),
  sheets: z.array(z.string()),
  from: z.number().nullable(),
  to: z.number().nullable(),
  ignoredColumns: z.array(z.string()),
  notes: z.array(z.string()),
});

/** What was found in a file. */
const checked = z.object({
  summary,
  /** The first of them; `faultCount` counts every fault of every line. */
  faults: z.array(faultGroup),
  faultCount: z.number(),
});

const result = z.object({
  added: z.number(),
  alreadyThere: z.number(),
  causes: z.number(),
  jobs: z.number(),
  newJobs: z.number(),
  newSetups: z.number(),
  newSheets: z.number(),
  newPeople: z.array(z.string()),
  newGauges: z.array(z.string()),
});

/** A file that was uploaded and waits to be checked, then to be confirmed; and, afterwards, what became of it. */
export const stagedFile = z.object({
  /** Shop and code of whoever sent it. */
  shop: z.number(),
  by: z.string(),
  name: z.string(),
  bytes: z.number(),
  sha256: z.string(),
  /** Null until the file is read. */
  checked: checked.nullable(),
  /** Null until the file is stored. */
  result: result.nullable(),
});

export type StagedFile = z.infer<typeof stagedFile>;
export type CheckedFile = z.infer<typeof checked>;
export type LoadedFile = z.infer<typeof result>;

/** Different faults kept for the page; a file with more is mended step by step anyway. */
export const FAULTS_KEPT = 500;

export const stagedId = z.uuid();
