import type { Json } from './json';

/** By whom and by which way something is done. */
export interface Actor {
  /** Person's code; null where no person is known (a command, a program). */
  person: string | null;
  /** `interface`: an API token; `program`: by itself. */
  via: 'page' | 'command' | 'interface' | 'program';
}

/** What something was, by name; null where there was nothing. */
type Values = Record<string, Json> | null;

/** One thing that was done. Names no person: whoever it concerns is named by the row alone. */
export interface TraceEntry {
  action: string;
  kind: string;
  subject: string;
  /** Row of the person whom it concerns. */
  concerns?: number | null | undefined;
  before?: Values | undefined;
  after?: Values | undefined;
  reason?: string | undefined;
}

/** One thing that was done, as the trace tells it. */
export interface TraceRow {
  id: number;
  at: number;
  /** Who did it, by the code of today; null where no person is known. */
  by: string | null;
  via: Actor['via'];
  action: string;
  kind: string;
  /** What was changed: `job J1, setup B1-01, …`, `gauge C1`, `person 3` (by row; the code is `concerns`). */
  subject: string;
  /** Whom it concerns beside the one who did it, by the code of today. */
  concerns: string | null;
  /** What was there and what came in its place; null where there was nothing to say. */
  before: Values;
  after: Values;
  reason: string | null;
}

/** Everything given must hold. */
export interface TraceQuery {
  job?: string | undefined;
  /** Code of somebody who did it or whom it concerns. */
  person?: string | undefined;
  kind?: string | undefined;
  /** From (inclusive) and to (exclusive). */
  from?: number | undefined;
  to?: number | undefined;
  /** From 1. */
  page?: number | undefined;
  pageSize?: number | undefined;
}
