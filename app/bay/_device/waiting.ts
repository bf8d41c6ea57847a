import { DATABASE, openDatabase } from './database';
import { exchange } from './exchange';

export interface WaitingRound {
  round: number;
  job: string;
  entries: number;
}

/** What waits on this device to be sent: the person's own, by round, and how much is somebody else's. */
export interface Waiting {
  own: WaitingRound[];
  others: number;
}

export async function waitingOn(who: string): Promise<Waiting> {
  const there = await indexedDB.databases().catch(() => []);
  if (!there.some(({ name }) => name === DATABASE)) return { own: [], others: 0 };
  const database = await openDatabase();
  try {
    const look = database.transaction(['rounds', 'outbox']);
    const keys = await look.objectStore('outbox').getAllKeys();
    const own = new Map<number, number>();
    for (const [whose, round] of keys) if (whose === who) own.set(round, (own.get(round) ?? 0) + 1);
    const rounds = await Promise.all(
      [...own].map(async ([round, entries]) => {
        const row = await look.objectStore('rounds').get([who, round]);
        return { round, job: row?.head.job ?? '', entries };
      }),
    );
    return { own: rounds, others: keys.filter(([whose]) => whose !== who).length };
  } finally {
    database.close();
  }
}

/** Sends what waits of the person's rounds, one after another. */
export async function sendWaiting(who: string, code: string): Promise<void> {
  const { own } = await waitingOn(who);
  if (own.length === 0) return;
  const database = await openDatabase();
  try {
    for (const { round } of own) {
      let outcome = await exchange(database, { who, code, round });
      while (outcome.is === 'more') outcome = await exchange(database, { who, code, round });
    }
  } finally {
    database.close();
  }
}
