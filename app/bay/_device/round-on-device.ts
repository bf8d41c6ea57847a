import type { BayHead, Entry, EntryBody, KeptEntry } from '@/lib/bay';
import { openDatabase, type BayDatabase } from './database';
import { exchange, type Outcome } from './exchange';
import { append, readHeld, takeUp, type HeldRound } from './keep';
import { NotHere, type Standing, type Whose } from './standing';

/** What the screen shows of the round and of the line to the shop. */
export interface Shown {
  /** False until the device has taken the round up; `failed` where it cannot keep anything. */
  state: 'opening' | 'ready' | 'failed';
  head: BayHead;
  /** What this device calls itself in this round; empty until it is ready. */
  device: string;
  kept: KeptEntry[];
  own: Entry[];
  /** What keeps entries from being sent, or null. */
  trouble: Exclude<Outcome, { is: 'gone' | 'more' }> | null;
  sending: boolean;
}

/** Asked this often what others entered, ms: in sight, and out of it. */
const EVERY = { visible: 4_000, hidden: 30_000 } as const;
/** Tried again after this, ms, twice as long each time. */
const FIRST_RETRY = 1_000;
const LONGEST_RETRY = 15_000;

/** Asked every few seconds: what has not changed is not worked out again. */
const isAlike = (held: HeldRound, shown: Shown): boolean =>
  held.device === shown.device &&
  held.head.finishedAt === shown.head.finishedAt &&
  held.kept.length === shown.kept.length &&
  held.kept.at(-1)?.key === shown.kept.at(-1)?.key &&
  held.own.length === shown.own.length &&
  held.own.at(-1)?.key === shown.own.at(-1)?.key;

type Told = { is: 'changed' } | { is: 'trouble'; trouble: Shown['trouble'] };

/**
 * One round on this device: keeps entries before it says so, sends them when there is a line, and tells every tab.
 * What a browser may lack (locks and channels between tabs) costs a little work, never an entry.
 */
export class RoundOnDevice {
  readonly #whose: Whose;
  readonly #first: { head: BayHead; kept: KeptEntry[] };
  #database: BayDatabase | null = null;
  #channel: BroadcastChannel | null = null;
  #shown: Shown;
  readonly #watchers = new Set<() => void>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #retry = FIRST_RETRY;
  #busy = false;
  #again = false;
  #stopped = false;
  #starts = 0;

  constructor(whose: Whose, head: BayHead, kept: KeptEntry[]) {
    this.#whose = whose;
    this.#first = { head, kept };
    this.#shown = { state: 'opening', head, device: '', kept, own: [], trouble: null, sending: false };
  }

  readonly subscribe = (watcher: () => void): (() => void) => {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  };

  readonly shown = (): Shown => this.#shown;

  async start(): Promise<void> {
    this.#stopped = false;
    const start = ++this.#starts;
    const database = await openDatabase().catch(() => null);
    try {
      if (database === null) throw new Error('This browser keeps nothing.');
      await takeUp(database, this.#whose, this.#first.head, this.#first.kept);
    } catch {
      this.#show({ state: 'failed' });
      return;
    }
    // It may have been stopped, and started again, meanwhile.
    if (this.#isStopped() || start !== this.#starts) return database.close();
    this.#database = database;
    const { who, round } = this.#whose;
    if (typeof BroadcastChannel === 'function') {
      this.#channel = new BroadcastChannel(`rehang-bay ${who} ${round}`);
      this.#channel.onmessage = ({ data }: MessageEvent<Told>) => {
        if (data.is === 'trouble') this.#show({ trouble: data.trouble });
        else void this.#reload();
      };
    }
    for (const event of ['online', 'focus'] as const) window.addEventListener(event, this.#poke);
    document.addEventListener('visibilitychange', this.#poke);
    await this.#reload({ state: 'ready' });
    this.#poke();
  }

  stop(): void {
    this.#stopped = true;
    clearTimeout(this.#timer);
    for (const event of ['online', 'focus'] as const) window.removeEventListener(event, this.#poke);
    document.removeEventListener('visibilitychange', this.#poke);
    this.#channel?.close();
    this.#database?.close();
    this.#database = null;
  }

  /**
   * Keeps entries; they are on the device's disk when this resolves.
   * @throws DoneAlready; whatever the browser says where it cannot keep them.
   */
  readonly enter = async (make: (standing: Standing) => EntryBody[]): Promise<Entry[]> => {
    const database = this.#database;
    if (database === null) throw new Error('The round is not on this device.');
    try {
      return await append(database, this.#whose, make).catch(async (error: unknown) => {
        if (!(error instanceof NotHere)) throw error;
        // Somebody signed out in another tab, and in again.
        await takeUp(database, this.#whose, this.#shown.head, this.#shown.kept);
        return append(database, this.#whose, make);
      });
    } finally {
      await this.#reload();
      this.#tell({ is: 'changed' });
      this.#poke();
    }
  };

  async #reload(change: Partial<Shown> = {}): Promise<void> {
    const held: HeldRound | null =
      this.#database === null ? null : await readHeld(this.#database, this.#whose).catch(() => null);
    const told = held !== null && !isAlike(held, this.#shown);
    this.#show({
      ...change,
      ...(told && { head: held.head, device: held.device, kept: held.kept, own: held.own }),
    });
  }

  #show(change: Partial<Shown>): void {
    const names = Object.keys(change) as (keyof Shown)[];
    if (names.every((name) => Object.is(change[name], this.#shown[name]))) return;
    this.#shown = { ...this.#shown, ...change };
    for (const watcher of this.#watchers) watcher();
  }

  #tell(told: Told): void {
    this.#channel?.postMessage(told);
  }

  readonly #poke = (): void => {
    this.#retry = FIRST_RETRY;
    void this.#work();
  };

  // Asked by functions of their own, since what was awaited in between may have changed them.
  #isStopped(): boolean {
    return this.#stopped;
  }

  #goesOn(): boolean {
    return this.#again && !this.#stopped;
  }

  /** Sends until nothing waits; one tab at a time where the browser can hold the others off. */
  async #work(): Promise<void> {
    if (this.#busy) {
      this.#again = true;
      return;
    }
    clearTimeout(this.#timer);
    this.#busy = true;
    try {
      do {
        this.#again = false;
        await this.#alone(() => this.#send());
        // Entered while it was being sent.
      } while (this.#goesOn());
    } finally {
      this.#busy = false;
      if (!this.#isStopped()) this.#timer = setTimeout(() => void this.#work(), this.#pause());
    }
  }

  async #alone(work: () => Promise<void>): Promise<void> {
    const { who, round } = this.#whose;
    const locks = (navigator as { locks?: LockManager }).locks;
    if (locks === undefined) return work();
    await locks.request(`rehang-bay ${who} ${round}`, { ifAvailable: true }, async (lock) => {
      if (lock !== null) await work();
    });
  }

  async #send(): Promise<void> {
    let outcome: Outcome;
    do {
      if (this.#database === null) return;
      this.#show({ sending: this.#shown.own.length > 0 });
      const before = this.#shown.kept.length + this.#shown.own.length;
      outcome = await exchange(this.#database, this.#whose).catch(() => ({ is: 'no-connection' as const }));
      const waited = this.#shown.own.length;
      const trouble = outcome.is === 'gone' || outcome.is === 'more' ? null : outcome;
      await this.#reload({ sending: false, trouble });
      const { kept, own } = this.#shown;
      if (kept.length + own.length !== before || own.length !== waited) this.#tell({ is: 'changed' });
      this.#tell({ is: 'trouble', trouble });
    } while (outcome.is === 'more');
  }

  #pause(): number {
    const every = EVERY[document.visibilityState === 'visible' ? 'visible' : 'hidden'];
    if (this.#shown.trouble === null) {
      this.#retry = FIRST_RETRY;
      return every;
    }
    const pause = this.#retry;
    this.#retry = Math.min(2 * this.#retry, LONGEST_RETRY);
    return pause;
  }
}
