import type { Json } from './json';

/** By whom and by which way something is done. */
export interface Actor {
  /** Person's code; null where no person is known (a command, a program). */
  person: string | null;
  /** `interface`: an API token; `program`: by itself. */
  via: 'page' | 'command' | 'interface' | 'program';
}

/** One thing that was done. Names no person: whoever it concerns is named by the row alone. */
export interface TraceEntry {
  action: string;
  kind: string;
  subject: string;
  /** Row of the person whom it concerns. */
  concerns?: number | undefined;
  before?: Json | undefined;
  after?: Json | undefined;
  reason?: string | undefined;
}
