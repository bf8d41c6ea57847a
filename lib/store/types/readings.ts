import type { Quantity, Side } from '@/lib/measure';
import type { JobFilter } from './jobs';

export interface ReadingFilter extends JobFilter {
  gauge?: string | undefined;
  /** One round or one setup of a job. */
  attempt?: number | undefined;
  setup?: string | undefined;
  quantity?: Quantity | undefined;
  /** Of dimensions alone that were read more than once in a setup. */
  repeated?: boolean | undefined;
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

/** Which reading. */
export interface ReadingPlace {
  job: string;
  setup: string;
  quantity: Quantity;
  point: string;
  side: Side | null;
  /** The sheet's value, mm: needed where a straight length and its diagonal share their name. */
  nominal?: number | undefined;
  repeat: number;
}

export interface RevisionQuery {
  job: string;
  setup?: string | undefined;
  /** Only readings that were corrected, excluded or included again. */
  changed?: boolean | undefined;
}

/** One revision of one reading; the one with the highest number counts. */
export interface ReadingRevision extends Required<Omit<ReadingPlace, 'nominal'>> {
  nominal: number;
  /** From 1. */
  revision: number;
  /** As read, mm, clearance included. */
  value: number;
  takenAt: number;
  excluded: boolean;
  /** Null of the first one. */
  reason: string | null;
  /** Who entered it by hand or changed it, by the code of today; null where a file brought it. */
  by: string | null;
  /** When it was entered by hand or changed; null where a file brought it. */
  enteredAt: number | null;
  /** The file of the first one, or null. */
  file: string | null;
  /** Its line there. */
  line: number | null;
}
