import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { beforeEach, describe, expect, it } from 'vitest';
import { recordOf, readingsOf, type Entry } from '@/lib/bay';
import { collapse } from '@/lib/measure';
import {
  bayEntries,
  bayStanding,
  beginBayRound,
  correctReading,
  excludeReading,
  getBayRound,
  inputsVersion,
  listBayRounds,
  listTrace,
  loadJobs,
  OutOfOrder,
  readingHistory,
  readingsFor,
  removePerson,
  saveGauges,
  savePeople,
  saveReadings,
  saveSheet,
  type NewBayRound,
} from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import {
  by,
  Device,
  dimension,
  DIMENSIONS,
  headOf,
  openRound,
  person,
  ROUND,
  send,
  SHEET,
} from './bay-device';
import { freshStore, statement } from './fresh-store';
import { BY_COMMAND, fileNamed, reading } from './invented-readings';
import { until } from './saving';

const store = freshStore();
let round = 0;
const a = new Device('aaa');
const b = new Device('bbb');
const [left, right] = [dimension('A', 'L'), dimension('A', 'R')];

beforeEach(async () => {
  round = await openRound(store.shop);
  a.made.length = b.made.length = 0;
});

const kept = (id = round) => bayEntries(store.shop, id, 0);
const conflicts = async () => (await kept()).map(({ conflict }) => conflict);
const values = async () => {
  const all: [string, number][] = [];
  for await (const one of readingsFor(store.shop))
    all.push([`${one.setup} ${one.point} ${one.side ?? ''} ${one.repeat}`, one.value]);
  return Object.fromEntries(all);
};
/** The job as the entries come to it, which is what the measurements are to hold. */
const asEntered = async (id = round) =>
  collapse(readingsOf(await headOf(store.shop, id), recordOf(await kept(id), [], 'ONE')));

describe('a round beside the car', () => {
  it('is begun once: whoever names the same again joins it, and the trace tells it', async () => {
    expect(await beginBayRound(store.shop, ROUND, 'TWO', by('TWO'))).toBe(round);
    expect(await beginBayRound(store.shop, { ...ROUND, attempt: 2 }, 'TWO', by('TWO'))).not.toBe(round);
    expect(await headOf(store.shop, round)).toMatchObject({
      ...{ job: 'J1', stage: 'before', attempt: 1, clearance: 100, by: 'ONE', finishedAt: null },
      sheet: { name: SHEET, revision: 1 },
    });
    expect((await headOf(store.shop, round)).sheet.dimensions).toHaveLength(DIMENSIONS.length);
    const { rows } = await listTrace(store.shop, { job: 'J1' });
    expect(rows.map(({ action, subject, by: who }) => [action, subject, who])).toEqual([
      ['begun', 'job J1, round before 2', 'TWO'],
      ['begun', 'job J1, round before 1', 'ONE'],
    ]);
  });

  it('is refused in words where it cannot be', async () => {
    const refused = (change: Partial<NewBayRound>) =>
      expect(beginBayRound(store.shop, { ...ROUND, ...change }, 'ONE', by('ONE'))).rejects;
    await refused({ sheet: 'Nowhere' }).toThrow(/no sheet Nowhere/);
    await refused({ clearance: 120 }).toThrow(/clearance of 100 mm/);
    await refused({ clearance: -1 }).toThrow(/clearance lies between/);
    await refused({ attempt: 1.5 }).toThrow(/whole number/);
    await refused({ job: ' ' }).toThrow(/job number/);
    const flat = DIMENSIONS.map((one) => ({ ...one, zero: false }));
    await saveSheet(store.shop, { name: 'Flat', dimensions: flat, points: [] }, BY_COMMAND);
    await refused({ job: 'J2', sheet: 'Flat' }).toThrow(/zero stations/);
    await saveSheet(store.shop, { name: 'Other', dimensions: DIMENSIONS, points: [] }, BY_COMMAND);
    await refused({ sheet: 'Other' }).toThrow(/another sheet/);
    await refused({ stage: 'after', sheet: 'Other' }).toThrow(/another sheet/);
    await database().sheet.updateMany({ where: { name: 'Other' }, data: { retiredAt: new Date() } });
    await refused({ job: 'J2', sheet: 'Other' }).toThrow(/retired/);
    const loaded = reading({ job: 'J3', sheet: SHEET, ...left, value: 300 });
    await saveReadings(store.shop, [loaded], fileNamed('three'), BY_COMMAND);
    await refused({ job: 'J3' }).toThrow(/loaded from a file already. Measure again as attempt 2/);
    await send(store.shop, round, [a.make({ kind: 'finish' })]);
    await refused({}).toThrow(/is finished. Measure again as attempt 2/);
  });

  it('is listed while it is open and some days after, with what is in it', async () => {
    a.hang('b1-1aaa');
    a.read('b1-1aaa', left, 300.5);
    await send(store.shop, round, a.made, 'TWO');
    const row = { id: round, job: 'J1', sheet: SHEET, stage: 'before', attempt: 1, by: 'ONE', readings: 1 };
    expect(await listBayRounds(store.shop, 'TRA')).toMatchObject([{ ...row, mine: false, finishedAt: null }]);
    expect(await listBayRounds(store.shop, 'TWO')).toMatchObject([{ ...row, mine: true }]);
    await send(store.shop, round, [a.make({ kind: 'finish' })], 'TWO');
    expect(await listBayRounds(store.shop, 'ONE')).toMatchObject([{ mine: true }]);
    expect(await listBayRounds(store.shop, 'ONE', Date.now() + 30 * 86_400_000)).toEqual([]);
  });
});

describe('an entry', () => {
  it('becomes a reading under the name of who entered it, of whose hand it was, and nothing before the first one', async () => {
    a.hang('b1-1aaa', { hand: 'TWO' });
    await send(store.shop, round, a.made, 'TRA', true);
    expect(await loadJobs(store.shop)).toEqual([]);
    a.read('b1-1aaa', left, 300.5);
    a.read('b1-1aaa', right, 299);
    a.read('b1-1aaa', left, 301, 2);
    await send(store.shop, round, a.made, 'TRA', true);
    const jobs = await loadJobs(store.shop);
    expect(jobs).toEqual(await asEntered());
    const [setup] = jobs[0]?.rounds[0]?.setups ?? [];
    expect(setup).toMatchObject({ label: 'b1-1aaa', technician: 'TWO', gauge: 'C1', gaugeKind: 'centering' });
    expect(setup?.observations[0]).toMatchObject({ n: 2, deviation: 0.75, ss: 0.125 });
    const [first] = await readingHistory(store.shop, { job: 'J1' });
    expect(first).toMatchObject({ by: 'TRA', file: null, line: null, revision: 1, value: 300.5 });
    expect(first?.enteredAt).not.toBeNull();
    // A row names no one in its document.
    expect(JSON.stringify(await database().bayEntry.findMany({ select: { document: true } }))).not.toMatch(
      /TWO|TRA/,
    );
    expect((await kept())[0]).toMatchObject({ by: 'TRA', body: { kind: 'hang', hand: 'TWO' } });
  });

  it('is kept once when it is sent again, also at the same time', async () => {
    a.hang('b1-1aaa');
    for (const repeat of [1, 2, 3]) a.read('b1-1aaa', left, 300 + repeat / 10, repeat);
    await Promise.all([0, 1, 2].map(() => send(store.shop, round, a.made)));
    await send(store.shop, round, a.made);
    expect((await kept()).map(({ key }) => key)).toEqual(a.made.map(({ key }) => key));
    expect(await loadJobs(store.shop)).toEqual(await asEntered());
    expect(await inputsVersion(store.shop)).toBe(3);
  });

  it('is taken in the order of its device alone: after a gap nothing is', async () => {
    a.hang('b1-1aaa');
    a.read('b1-1aaa', left, 300.5);
    const missing = a.read('b1-1aaa', right, 300.5);
    const late = a.read('b1-1aaa', left, 301, 2);
    const sent = a.made.filter((one) => one !== missing);
    const error = await send(store.shop, round, sent).catch((one: unknown) => one);
    expect(error).toBeInstanceOf(OutOfOrder);
    expect(error).toMatchObject({ device: 'aaa', sequence: 4, last: 2, taken: false });
    expect(String(error)).toMatch(/Send the entries in their order, from 3 on/);
    expect(await kept()).toHaveLength(2);
    await send(store.shop, round, [missing, late]);
    expect(await kept()).toHaveLength(4);
    const other = { ...new Device('aaa').hang('b1-9aaa'), sequence: 3 };
    await expect(send(store.shop, round, [other])).rejects.toMatchObject({ last: 4, taken: true });
  });

  it('is kept for good: the database refuses to change or delete it', async () => {
    a.hang('b1-1aaa');
    await send(store.shop, round, a.made);
    for (const change of [`UPDATE "BayEntry" SET "device" = 'x'`, `DELETE FROM "BayEntry"`])
      await expect(statement(change)).rejects.toThrow(/only ever added/);
  });

  it('comes too late for nothing: after the end of its round it is taken all the same', async () => {
    a.hang('b1-1aaa');
    a.read('b1-1aaa', left, 300.5);
    a.make({ kind: 'finish' });
    a.make({ kind: 'finish' });
    await send(store.shop, round, a.made);
    const { finishedAt } = await headOf(store.shop, round);
    expect(finishedAt).not.toBeNull();
    expect((await listTrace(store.shop, { kind: 'bay round' })).rows.map(({ action }) => action)).toEqual([
      'finished',
      'begun',
    ]);
    b.hang('b1-1bbb');
    b.read('b1-1bbb', left, 302);
    await new Promise((resolve) => setTimeout(resolve, 2));
    await send(store.shop, round, b.made, 'TWO');
    expect(await values()).toMatchObject({ 'b1-1bbb A L 1': 302 });
    expect(await conflicts()).toEqual(Array<null>(6).fill(null));
    // It opens nothing to whoever sends it.
    expect(await bayStanding(store.shop, round, 'TWO')).toEqual({ finishedAt, tookPart: false });
    expect(await bayStanding(store.shop, round, 'ONE')).toEqual({ finishedAt, tookPart: true });
    expect(await bayEntries(store.shop, round, 0, 'TWO')).toHaveLength(2);
  });

  it('of a clock that runs ahead does not put a reading into the future', async () => {
    const ahead = new Device('ccc', Date.now() + 9e9);
    ahead.hang('b1-1ccc');
    ahead.read('b1-1ccc', left, 300.5);
    await send(store.shop, round, ahead.made);
    const job = await database().job.findFirstOrThrow();
    expect(job.lastReadAt.getTime()).toBeLessThanOrEqual(Date.now());
  });

  it('says the same as a file of its readings: loading the download again adds nothing', async () => {
    a.hang('b1-1aaa');
    a.hang('b1-2aaa', { gauge: 'T1', gaugeKind: 'tram' });
    a.read('b1-1aaa', left, 300.5);
    a.read('b1-2aaa', dimension('A-B'), 1203);
    a.correct('b1-1aaa', left, 300.5, 301.5);
    await send(store.shop, round, a.made);
    const all = [];
    for await (const one of readingsFor(store.shop)) all.push(one);
    expect(await saveReadings(store.shop, all, fileNamed('download'), BY_COMMAND)).toMatchObject({
      added: 0,
      alreadyThere: 2,
    });
  });
});

describe('a correction', () => {
  it('is a revision with its reason, in the name of who made it', async () => {
    a.hang('b1-1aaa');
    a.read('b1-1aaa', left, 300.5);
    a.correct('b1-1aaa', left, 300.5, 302.5);
    a.correct('b1-1aaa', left, 302.5, 302.5);
    await send(store.shop, round, a.made);
    expect(await conflicts()).toEqual([null, null, null, null]);
    expect(await readingHistory(store.shop, { job: 'J1' })).toMatchObject([
      { revision: 1, value: 300.5, reason: null },
      { revision: 2, value: 302.5, reason: 'misread', by: 'ONE' },
    ]);
    expect(await loadJobs(store.shop)).toEqual(await asEntered());
    expect((await listTrace(store.shop, { kind: 'reading' })).rows).toMatchObject([{ action: 'corrected' }]);
  });
});

describe('a contradiction is kept with its reason, and changes no measurement', () => {
  const second = async (entry: Entry, code = 'TWO') => {
    await send(store.shop, round, [entry], code);
    return (await conflicts()).at(-1);
  };

  beforeEach(async () => {
    a.hang('b1-1aaa');
    a.read('b1-1aaa', left, 300.5);
    await send(store.shop, round, a.made);
  });

  it('of another value for the same reading; the same value agrees', async () => {
    expect(await second(b.read('b1-1aaa', left, 300.5))).toBeNull();
    expect(await second(b.read('b1-1aaa', left, 302))).toMatch(/Another value/);
    expect(await values()).toEqual({ 'b1-1aaa A L 1': 300.5 });
    expect(recordOf(await kept(), [], 'ONE').contradictions).toMatchObject([
      { setup: 'b1-1aaa', first: 300.5, second: 302, repeat: 1 },
    ]);
  });

  it('of a correction of what is another by now, or is not there', async () => {
    await send(store.shop, round, [a.correct('b1-1aaa', left, 300.5, 301)]);
    expect(await second(b.correct('b1-1aaa', left, 300.5, 303))).toMatch(/had another value/);
    expect(await second(b.correct('b1-1aaa', left, 300.5, 301))).toBeNull();
    expect(await second(b.correct('b1-1aaa', right, 300, 301))).toMatch(/no such reading/);
    expect(await values()).toEqual({ 'b1-1aaa A L 1': 301 });
  });

  it('of a setup, a dimension, a value or a hand that is none', async () => {
    expect(await second(b.read('b1-9bbb', left, 300))).toMatch(/b1-9bbb was not hung/);
    expect(await second(b.read('b1-1aaa', { ...left, point: 'X' }, 300))).toMatch(/has no height X L/);
    expect(await second(b.read('b1-1aaa', { ...dimension('A-B'), nominal: 7 }, 300))).toMatch(/of 7 mm/);
    expect(await second(b.read('b1-1aaa', dimension('A-B'), 0))).toMatch(/0 mm is no length/);
    expect(await second(b.hang('b1-1bbb', { hand: 'ONE' }))).toMatch(/Only a trainer or a manager/);
    expect(await second(b.read('b1-1bbb', left, 300))).toMatch(/Only a trainer or a manager/);
    expect(recordOf(await kept(), [], 'ONE')).toMatchObject({
      setups: [{ label: 'b1-1aaa' }],
      contradictions: [{}, {}, {}, {}, {}],
    });
    expect(await loadJobs(store.shop)).toEqual(await asEntered());
  });

  it('of a hand that was removed, which is not named again and counts to nobody else', async () => {
    await savePeople(store.shop, [person('GON'), person('BOS', 'manager')], BY_COMMAND);
    await removePerson(store.shop, 'GON', 'asked for it', by('BOS'));
    b.hang('b1-1bbb', { hand: 'GON' });
    const read = b.read('b1-1bbb', left, 300);
    b.settle(read.key, 'second');
    await send(store.shop, round, b.made, 'TRA', true);
    expect((await conflicts()).slice(2)).toEqual(
      Array<unknown>(3).fill(expect.stringMatching(/nobody of this shop/)),
    );
    expect(JSON.stringify(await database().bayEntry.findMany())).not.toContain('GON');
    expect(await values()).toEqual({ 'b1-1aaa A L 1': 300.5 });
  });

  it('of a gauge of another kind; it is taken when that is mended and the contradiction settled for it', async () => {
    expect(await second(b.hang('b1-1bbb', { gaugeKind: 'tram' }))).toMatch(/known as centering, not as tram/);
    const read = b.read('b1-1bbb', right, 305);
    expect(await second(read)).toMatch(/known as centering/);
    expect(await second(b.settle(read.key, 'second'))).toMatch(/known as centering/);
    expect(recordOf(await kept(), [], 'ONE').contradictions).toHaveLength(1);
    const mended = { fixedMark: null, state: 'in-service', verifiedAt: null } as const;
    await saveGauges(store.shop, [{ tag: 'C1', kind: 'tram', ...mended }], BY_COMMAND);
    expect(await second(b.settle(read.key, 'second'))).toBeNull();
    expect(await values()).toEqual({ 'b1-1aaa A L 1': 300.5, 'b1-1bbb A R 1': 305 });
    expect(recordOf(await kept(), [], 'ONE')).toMatchObject({
      setups: [{ label: 'b1-1aaa' }, { label: 'b1-1bbb', hand: 'TWO' }],
      contradictions: [],
    });
  });

  it('of a label that stands for another hanging; the same hanging may be told again', async () => {
    expect(await second({ ...a.hang('b1-1aaa'), device: 'bbb', sequence: 1 }, 'ONE')).toBeNull();
    expect(await second({ ...b.hang('b1-1aaa'), sequence: 2 })).toMatch(/was hung already/);
    const loaded = reading({
      ...left,
      job: 'J1',
      sheet: SHEET,
      stage: 'after',
      setup: 'b1-7bbb',
      value: 300,
    });
    await saveReadings(store.shop, [loaded], fileNamed('after'), BY_COMMAND);
    expect(await second({ ...b.hang('b1-7bbb'), sequence: 3 })).toMatch(
      /stands for another hanging in job J1/,
    );
  });

  it('of a job that was meanwhile loaded with another sheet or clearance', async () => {
    const [second2, third] = [
      await beginBayRound(store.shop, { ...ROUND, job: 'J2' }, 'ONE', by('ONE')),
      await beginBayRound(store.shop, { ...ROUND, attempt: 2 }, 'ONE', by('ONE')),
    ];
    const other = reading({ job: 'J2', sheet: 'S9' });
    const higher = reading({
      ...left,
      job: 'J1',
      sheet: SHEET,
      attempt: 2,
      clearance: 120,
      setup: 'x',
      value: 320,
    });
    await saveReadings(store.shop, [other, { ...higher, line: 3 }], fileNamed('meanwhile'), BY_COMMAND);
    for (const [id, why] of [
      [second2, /J2 is measured against another sheet/],
      [third, /before 2 of job J1 is measured with another clearance/],
    ] as const) {
      const device = new Device('ddd');
      device.hang(`b-${id}ddd`);
      device.read(`b-${id}ddd`, left, 300);
      await send(store.shop, id, device.made);
      expect((await kept(id)).map(({ conflict }) => conflict)).toEqual([null, expect.stringMatching(why)]);
    }
    expect(Object.keys(await values())).toHaveLength(3);
  });

  it('of a reading that was excluded since', async () => {
    const { side, quantity, point } = left;
    const place = { job: 'J1', setup: 'b1-1aaa', quantity, point, side, repeat: 1 };
    await excludeReading(store.shop, { ...place, reason: 'the car moved' }, by('TRA'));
    const read = b.read('b1-1aaa', left, 300);
    expect(await second(read)).toMatch(/excluded/);
    expect(await second(b.settle(read.key, 'second'))).toMatch(/excluded/);
    expect(await values()).toEqual({});
  });

  it('until it is settled: the first value stays, or the second takes its place with the reason', async () => {
    const [one, two] = [b.read('b1-1aaa', left, 302), b.read('b1-1aaa', left, 303)];
    await send(store.shop, round, b.made, 'TWO');
    expect(await second(b.settle(one.key, 'first', 'it was 300.5'))).toBeNull();
    expect(await values()).toEqual({ 'b1-1aaa A L 1': 300.5 });
    expect(await second(b.settle(two.key, 'second', 'read again: 303'))).toBeNull();
    expect(await second(b.settle(two.key, 'first'))).toMatch(/settled already/);
    expect(await second(b.settle(a.made[1]?.key ?? '', 'second'))).toMatch(/no contradiction/);
    expect(await values()).toEqual({ 'b1-1aaa A L 1': 303 });
    expect(await readingHistory(store.shop, { job: 'J1', changed: true })).toMatchObject([
      { revision: 1, by: 'ONE' },
      { revision: 2, by: 'TWO', reason: 'read again: 303' },
    ]);
    expect(recordOf(await kept(), [], 'ONE').contradictions).toEqual([]);
    expect(await loadJobs(store.shop)).toEqual(await asEntered());
    const settled = await listTrace(store.shop, { kind: 'bay round', job: 'J1' });
    expect(settled.rows.slice(0, 2)).toMatchObject([
      { action: 'settled', by: 'TWO', after: { kept: 'second', second: 303 }, reason: 'read again: 303' },
      { action: 'settled', after: { kept: 'first', second: 302 } },
    ]);
  });

  it('and what was corrected outside of the round counts for what comes after it', async () => {
    const { side, quantity, point } = left;
    const place = { job: 'J1', setup: 'b1-1aaa', quantity, point, side, repeat: 1 };
    await correctReading(store.shop, { ...place, value: 304, reason: 'seen on the photograph' }, by('TRA'));
    expect(await second(b.read('b1-1aaa', left, 304))).toBeNull();
    expect(recordOf(await kept(), [], 'ONE').setups[0]?.readings.get('height A L #1')?.value).toBe(304);
  });
});

describe('another shop', () => {
  it('finds no round, gets no entry and can put none in', async () => {
    await statement(`INSERT INTO "Shop" ("id", "name", "timeZone") VALUES (77, 'Other shop', 'UTC')`);
    a.hang('b1-1aaa');
    await send(store.shop, round, a.made);
    await savePeople(77, [person('ONE')], BY_COMMAND);
    expect(await getBayRound(77, round)).toBeNull();
    expect(await bayStanding(77, round, 'ONE')).toBeNull();
    expect(await bayEntries(77, round, 0)).toEqual([]);
    expect(await listBayRounds(77, 'ONE')).toEqual([]);
    b.hang('b1-1bbb');
    for (const entries of [a.made, b.made])
      await send(77, round, entries).catch((error: unknown) =>
        expect(String(error)).toMatch(/no such round/),
      );
    expect(await kept()).toHaveLength(1);
  });
});

describe('a process killed while entries come in', () => {
  it('leaves every entry that it had acknowledged, each with its reading, and none by half', async () => {
    const program = ['lib/commands/begin.mjs', 'tests/unit/store/entering-process.ts'];
    const child = spawn(process.execPath, [...program, String(store.shop), String(round)], {
      env: { ...process.env, DATABASE_URL: store.url },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const ended = once(child, 'exit');
    let said = '';
    child.stdout.on('data', (piece: Buffer) => (said += piece.toString()));
    const acknowledged = () => said.split('\n').slice(0, -1);
    await until(() => acknowledged().length > 10);
    child.kill('SIGKILL');
    await ended;
    const entries = await kept();
    const keys = entries.map(({ key }) => key);
    expect(keys.slice(0, acknowledged().length)).toEqual(acknowledged());
    // One more may have been kept without the news of it getting out.
    expect(keys.length - acknowledged().length).toBeLessThanOrEqual(1);
    expect(entries.map(({ sequence }) => sequence)).toEqual(keys.map((_, index) => index + 1));
    expect(await inputsVersion(store.shop)).toBe(entries.filter(({ body }) => body.kind === 'read').length);
    expect(await loadJobs(store.shop)).toEqual(await asEntered());
    b.hang('b1-1bbb');
    await send(store.shop, round, b.made);
    expect(await kept()).toHaveLength(entries.length + 1);
  });
});
