import { NextRequest } from 'next/server';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Entry, KeptEntry } from '@/lib/bay';
import type { Viewer } from '@/lib/identity';
import { bayEntries, getPerson, getShop } from '@/lib/store';
import { GET, POST } from '@/app/bay/[round]/entries/route';
import { POST as begin } from '@/app/bay/begin/route';
import { Device, dimension, openRound, SHEET } from '@/tests/unit/store/bay-device';
import { freshStore } from '@/tests/unit/store/fresh-store';

const here = await vi.hoisted(async () => {
  // The framework puts it there before any page or endpoint is loaded.
  const { AsyncLocalStorage } = await import('node:async_hooks');
  Object.assign(globalThis, { AsyncLocalStorage });
  return { viewer: null as Viewer | null, language: 'en' };
});
vi.mock('@/lib/identity', () => ({ viewerOf: () => Promise.resolve(here.viewer) }));

vi.mock('next/headers', () => ({
  cookies: () =>
    Promise.resolve({ get: (name: string) => (name === 'language' ? { value: here.language } : undefined) }),
}));

const store = freshStore();
let round = 0;

beforeEach(async () => {
  round = await openRound(store.shop);
  here.language = 'en';
  const person = await getPerson(store.shop, 'ONE');
  if (person === null) throw new Error('nobody');
  const { code, name, role } = person;
  const account = { signInName: 'one', secondFactor: false, session: 's' };
  here.viewer = { shop: await getShop(), code, name, role, person, ...account };
});

const at = (place: string, id: number | string = round) => ({
  request: (init: ConstructorParameters<typeof NextRequest>[1] = {}) =>
    new NextRequest(`http://localhost/bay/${id}/${place}`, init),
  params: { params: Promise.resolve({ round: String(id) }) },
});

function post(body: unknown, id: number | string = round, headers: Record<string, string> = {}) {
  const { request, params } = at('entries', id);
  const text = typeof body === 'string' ? body : JSON.stringify(body);
  const length = { 'Content-Length': String(text.length), ...headers };
  return POST(request({ method: 'POST', body: text, headers: length }), params);
}

const told = async (response: Response) => ((await response.json()) as { entries: KeptEntry[] }).entries;

describe('the endpoint of entries', () => {
  it('takes them in order and answers with what came after the last one that the device knows', async () => {
    const device = new Device('aaa');
    device.hang('b1-1aaa');
    device.read('b1-1aaa', dimension('A', 'L'), 300.5);
    const first = await post({ since: 0, entries: device.made });
    expect(first.status).toBe(200);
    const [hang, read] = await told(first);
    expect([hang?.key, read?.key]).toEqual(device.made.map(({ key }) => key));
    expect(read).toMatchObject({ by: 'ONE', conflict: null, body: { kind: 'read', value: 300.5 } });
    const { request, params } = at(`entries?since=${hang?.id ?? 0}`);
    expect(await told(await GET(request(), params))).toEqual([read]);
    expect(await told(await post({ since: read?.id ?? 0, entries: device.made }))).toEqual([]);
  });

  it('tells a device from which entry on it has to send, and keeps those before the gap', async () => {
    const device = new Device('aaa');
    device.hang('b1-1aaa');
    device.hang('b1-2aaa');
    const late = device.hang('b1-3aaa');
    const [first] = device.made;
    const answer = await post({ since: 0, entries: [first, late] });
    expect(answer.status).toBe(409);
    expect(await answer.json()).toEqual({
      ...{ device: 'aaa', last: 1, taken: false },
      message: expect.stringMatching(/from 2 on/) as string,
    });
  });

  it('refuses in words what is none, too much, or of no round; strangers first', async () => {
    const entry = (change: Partial<Entry>) => ({ ...new Device('aaa').hang('b1-1aaa'), ...change });
    for (const [answer, status, words] of [
      [await post('no JSON'), 422, /no JSON/],
      [await post({ since: -1, entries: [] }), 422, /since/],
      [await post({ since: 0, entries: [entry({ device: 'AAA' })] }), 422, /entries\.0\.device/],
      [await post({ since: 0, entries: [] }, round, { 'Content-Length': '600000' }), 413, /more than/],
      [await post({ since: 0, entries: [] }, round + 1), 404, /no such round/],
      [await post({ since: 0, entries: [] }, 'x'), 404, /no such round/],
      [await post({ since: 0, entries: [] }, round, { 'sec-fetch-site': 'cross-site' }), 403, /from a page/],
    ] as const) {
      expect(answer.status).toBe(status);
      expect(await answer.text()).toMatch(words);
    }
    here.viewer = null;
    expect((await post({ since: 0, entries: [] })).status).toBe(401);
  });

  it('tells in the reader’s language why an entry was not taken, and keeps it in one', async () => {
    here.language = 'de';
    const device = new Device('aaa');
    device.read('b1-1aaa', dimension('A', 'L'), 300);
    device.hang('b1-2aaa');
    device.read('b1-2aaa', dimension('A-B'), 0);
    const [first, , last] = await told(await post({ since: 0, entries: device.made }));
    expect(first?.conflict).toBe('Die Aufhängung b1-1aaa gibt es in diesem Durchgang nicht.');
    expect(last?.conflict).toBe(
      '0\u00a0mm ist keine Länge an einem Fahrzeug: Sie liegt zwischen 1 und 20000\u00a0mm.',
    );
    expect((await bayEntries(store.shop, round, 0))[0]?.conflict).toMatch(/was not hung/);
    const gap = await post({ since: 0, entries: [{ ...device.hang('b1-3aaa'), sequence: 9 }] });
    expect(((await gap.json()) as { message: string }).message).toMatch(/in ihrer Reihenfolge senden, ab 4/);
  });

  it('keeps what cannot be printed as a space, since a refusal would leave the device stuck', async () => {
    const device = new Device('aaa');
    device.make({ kind: 'skip', step: 'lengths', place: null, reason: 'no\u0000time \ud800' });
    const [kept] = await told(await post({ since: 0, entries: device.made }));
    expect(kept?.body).toMatchObject({ reason: 'no time \ufffd' });
  });
});

describe('the form by which a round begins', () => {
  it('leads to the round, or back with the reason', async () => {
    const send = async (fields: Record<string, string>) => {
      const body = new URLSearchParams({
        job: 'J7',
        sheet: SHEET,
        stage: 'after',
        attempt: '1',
        clearance: '100',
        ...fields,
      });
      const headers = {
        'Content-Type': 'application/x-www-form-urlencoded',
        'Content-Length': String(body.toString().length),
      };
      const answer = await begin(at('begin').request({ method: 'POST', body: body.toString(), headers }));
      return [
        answer.status,
        answer.headers.get('location'),
        decodeURIComponent(answer.headers.get('set-cookie') ?? ''),
      ];
    };
    const [status, place] = await send({});
    expect([status, place]).toEqual([303, `/bay/${round + 1}`]);
    expect((await send({}))[1]).toBe(place);
    expect(await send({ clearance: '120' })).toEqual([
      303,
      '/bay',
      expect.stringMatching(/clearance of 100\smm/),
    ]);
    expect(await send({ attempt: 'first' })).toEqual([
      303,
      '/bay',
      expect.stringMatching(/No round was begun/),
    ]);
  });
});
