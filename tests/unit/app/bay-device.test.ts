import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DATABASE, openDatabase, type BayDatabase } from '@/app/bay/_device/database';
import { exchange } from '@/app/bay/_device/exchange';
import { forget } from '@/app/bay/_device/forget';
import { append, readHeld, takeUp } from '@/app/bay/_device/keep';
import { DoneAlready, type Whose } from '@/app/bay/_device/standing';
import { waitingOn } from '@/app/bay/_device/waiting';
import type { Entry, EntryBody, KeptEntry } from '@/lib/bay';
import { SMALL_HEAD } from '@/tests/unit/bay/small-round';

const ME: Whose = { who: '1.QUI', code: 'QUI', round: 7 };
const COLLEAGUE: Whose = { who: '1.HOL', code: 'HOL', round: 7 };
const check = (note: string): EntryBody => ({ kind: 'equipment', check: 'looks-sound', ok: true, note });

/** A shop that keeps entries as the real one does: in order, each once. */
class Shop {
  kept: KeptEntry[] = [];
  status = 200;
  readonly asked: number[] = [];

  readonly fetch = (address: string | URL, init?: RequestInit): Promise<Response> => {
    if (this.status === 0) return Promise.reject(new TypeError('no line'));
    if (this.status !== 200) return Promise.resolve(new Response('A sentence.', { status: this.status }));
    const sent = init?.body === undefined ? null : (JSON.parse(init.body as string) as Sent);
    const since = sent?.since ?? Number(new URL(address, 'http://shop').searchParams.get('since'));
    this.asked.push(sent?.entries.length ?? 0);
    for (const entry of sent?.entries ?? []) {
      if (this.kept.some(({ key }) => key === entry.key)) continue;
      const last = this.kept.filter(({ device }) => device === entry.device).length;
      if (entry.sequence !== last + 1) return Promise.resolve(new Response('Gap.', { status: 409 }));
      this.keep(entry, 'QUI');
    }
    return Promise.resolve(Response.json({ entries: this.kept.filter(({ id }) => id > since) }));
  };

  keep(entry: Entry, by: string): void {
    this.kept.push({ ...entry, id: (this.kept.at(-1)?.id ?? 0) + 1, by, conflict: null });
  }

  notes = () => this.kept.map(({ body }) => (body.kind === 'equipment' ? body.note : null));
}

interface Sent {
  since: number;
  entries: Entry[];
}

let shop: Shop;
let database: BayDatabase;

beforeEach(async () => {
  shop = new Shop();
  vi.stubGlobal('fetch', shop.fetch);
  database = await openDatabase();
  await takeUp(database, ME, SMALL_HEAD, []);
});

afterEach(async () => {
  vi.unstubAllGlobals();
  database.close();
  await new Promise((done) => (indexedDB.deleteDatabase(DATABASE).onsuccess = done));
});

const enter = (...notes: string[]) => append(database, ME, () => notes.map(check));
const held = async () => (await readHeld(database, ME)) ?? { kept: [], own: [], device: '', sequence: 0 };

describe('what is entered on a device', () => {
  it('is numbered without a gap, also by two tabs at once', async () => {
    const other = await openDatabase();
    await Promise.all([enter('a'), append(other, ME, () => [check('b'), check('c')]), enter('d')]);
    other.close();
    const { own } = await held();
    expect(own.map(({ sequence }) => sequence)).toEqual([1, 2, 3, 4]);
    expect(new Set(own.map(({ key }) => key)).size).toBe(4);
    expect(own.map(({ at }) => at)).toEqual([...new Set(own.map(({ at }) => at))].sort((a, b) => a - b));
  });

  it('is made from what stands there in that moment, and not at all where it was done already', async () => {
    const once = () =>
      append(database, ME, ({ record }) => {
        if (record.checks.has('looks-sound')) throw new DoneAlready();
        return [check('once')];
      });
    await once();
    await expect(once()).rejects.toThrow(DoneAlready);
    expect((await held()).own).toHaveLength(1);
  });

  it('labels every hanging anew, also two of one moment', async () => {
    const hang = (setup: string): EntryBody => ({
      ...{ kind: 'hang', setup, place: 'heights 0 A', gauge: 'CG1', gaugeKind: 'centering', hand: null },
    });
    await append(database, ME, ({ labels }) => [hang(labels()), hang(labels())]);
    const [entry] = await append(database, ME, ({ labels }) => [hang(labels())]);
    const { device } = await held();
    expect(entry?.body).toMatchObject({ setup: `b1-3${device}` });
  });
});

describe('without a line', () => {
  it('entries wait, and go in their order when it is back, each once', async () => {
    await enter('a', 'b');
    shop.status = 0;
    expect(await exchange(database, ME)).toEqual({ is: 'no-connection' });
    shop.status = 503;
    expect(await exchange(database, ME)).toEqual({ is: 'no-connection' });
    await enter('c');
    shop.status = 200;
    expect(await exchange(database, ME)).toEqual({ is: 'gone' });
    expect(shop.notes()).toEqual(['a', 'b', 'c']);
    expect(await held()).toMatchObject({ own: [], since: 3 });
  });

  it('an answer that was lost on its way makes nothing twice', async () => {
    await enter('a', 'b');
    const [first] = (await held()).own;
    if (first !== undefined) shop.keep(first, 'QUI');
    await exchange(database, ME);
    expect(shop.notes()).toEqual(['a', 'b']);
    expect((await held()).own).toEqual([]);
  });

  it('what others entered comes in with the next exchange', async () => {
    shop.keep({ key: 'other', device: 'zzz', sequence: 1, at: 1, body: check('theirs') }, 'HOL');
    await exchange(database, ME);
    expect((await held()).kept.map(({ by }) => by)).toEqual(['HOL']);
  });

  it('somebody else’s page in place of the shop’s answer is no answer', async () => {
    await enter('a');
    vi.stubGlobal('fetch', () => Promise.resolve(new Response('<p>Welcome to our guests’ network')));
    expect(await exchange(database, ME)).toEqual({ is: 'no-connection' });
    expect((await held()).own).toHaveLength(1);
  });
});

describe('a shop that refuses', () => {
  it('asks to sign in again, and everything stays', async () => {
    await enter('a');
    shop.status = 401;
    expect(await exchange(database, ME)).toEqual({ is: 'sign-in' });
    shop.status = 422;
    expect(await exchange(database, ME)).toEqual({ is: 'refused', why: 'A sentence.' });
    expect((await held()).own).toHaveLength(1);
  });

  it('that lost entries since it acknowledged them gets them again', async () => {
    await enter('a', 'b', 'c');
    await exchange(database, ME);
    shop.kept = shop.kept.slice(0, 1);
    await enter('d');
    expect(await exchange(database, ME)).toEqual({ is: 'gone' });
    expect(shop.notes()).toEqual(['a', 'b', 'c', 'd']);
    expect((await held()).own).toEqual([]);
  });

  it('another device of the same name leads to a new name, and nothing is lost', async () => {
    await enter('mine');
    const { device } = await held();
    shop.keep({ key: 'other', device, sequence: 1, at: 1, body: check('theirs') }, 'HOL');
    expect(await exchange(database, ME)).toEqual({ is: 'gone' });
    expect(shop.notes()).toEqual(['theirs', 'mine']);
    expect((await held()).device).not.toBe(device);
    await enter('next');
    await exchange(database, ME);
    expect(shop.notes()).toEqual(['theirs', 'mine', 'next']);
  });
});

describe('when somebody signs out', () => {
  it('what was sent leaves the device, and what was not stays for the same person alone', async () => {
    await enter('sent');
    await exchange(database, ME);
    await takeUp(database, { ...ME, round: 8 }, { ...SMALL_HEAD, id: 8 }, []);
    await append(database, { ...ME, round: 8 }, () => [check('waits')]);
    await takeUp(database, COLLEAGUE, SMALL_HEAD, []);
    await forget();
    expect(await readHeld(database, ME)).toBeNull();
    expect(await readHeld(database, COLLEAGUE)).toBeNull();
    expect(await waitingOn('1.QUI')).toEqual({ own: [{ round: 8, job: 'J-1', entries: 1 }], others: 0 });
    expect(await waitingOn('1.HOL')).toEqual({ own: [], others: 1 });
  });

  it('who signs in next keeps the own rounds only', async () => {
    await enter('waits');
    await takeUp(database, COLLEAGUE, SMALL_HEAD, shop.kept);
    await forget('1.HOL');
    expect(await readHeld(database, COLLEAGUE)).not.toBeNull();
    expect((await held()).own).toHaveLength(1);
  });
});
