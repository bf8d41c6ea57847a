import { AsyncLocalStorage } from 'node:async_hooks';
import { databaseUrl } from './database-url';
import { engine } from './database';
import type { Postgresql } from './postgresql';

/**
 * A word for all that is committed in the database: while it stays the same, every question is answered as before.
 * Of SQLite it is the number of the file that changes with every commit of another connection, and pages ask on one
 * that commits nothing; of a server it names the transactions that a question now does not see, so that it changes
 * with every one that begins or ends.
 */
export async function databaseState(): Promise<string> {
  const { sqlite, server } = await engine();
  return server === null ? sqlite.version : stateFor(server);
}

/** A stretch of work, and what a server held when it first asked. */
interface Moment {
  server: Postgresql | null;
  state: Promise<string> | null;
  /** Of this process, when it asked. */
  writes: number;
  over: boolean;
}

// One a process, also where the server loads this module more than once.
const held = globalThis as typeof globalThis & { rehangMoments?: AsyncLocalStorage<Moment> };
const moments = (held.rehangMoments ??= new AsyncLocalStorage<Moment>());

/**
 * Does work that may take all that it asks as of one moment: a server says once what it holds, where it is asked
 * otherwise before each question whose answer may be known. For answers that somebody waits for, and that do not tell of
 * what was written after they were asked for. What this process writes counts at once all the same.
 * @param work is handed what ends the moment, for whatever goes on behind it
 */
export function atOneMoment<Result>(work: (end: () => void) => Result): Result {
  if (databaseUrl().engine === 'sqlite') return work(() => undefined);
  const moment: Moment = { server: null, state: null, writes: 0, over: false };
  return moments.run(moment, () => work(() => (moment.over = true)));
}

/** The word of a server: of the moment that this work may take all as of, else of now. */
export function stateFor(server: Postgresql): Promise<string> {
  const moment = moments.getStore();
  if (moment === undefined || moment.over) return server.state();
  if (moment.state !== null && moment.server === server && moment.writes === server.writes)
    return moment.state;
  const state = server.state();
  Object.assign(moment, { server, state, writes: server.writes });
  // Whoever waits for it hears of it; who asks next asks anew.
  state.catch(() => (moment.state = null));
  return state;
}
