import type { Quantity } from '@/lib/measure';
import type { JobFilter } from './jobs';

export interface ReadingFilter extends JobFilter {
  gauge?: string | undefined;
  /** One round or one setup of a job. */
  attempt?: number | undefined;
  setup?: string | undefined;
  quantity?: Quantity | undefined;
}

/** The file that readings come from. `sha256` in hex, of the bytes as given. */
export interface SourceFile {
  name: string;
  sha256: string;
  lines: number;
}

export interface LoadedFile extends SourceFile {
  loadedAt: number;
  added: number;
  alreadyThere: number;
}

export interface SaveSummary {
  added: number;
  alreadyThere: number;
  /** Re-check causes that the file newly states. */
  causes: number;
  /** Numbers of the jobs that gained something, in order. */
  jobs: string[];
  newJobs: number;
  newSetups: number;
  newSheets: number;
  newPeople: string[];
  newGauges: string[];
}

/** One line that cannot be stored, and why. */
export interface Conflict {
  line: number;
  column: string;
  reason: string;
}
