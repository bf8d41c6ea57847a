import { describe, expect, it } from 'vitest';
import { currentFigures } from '@/lib/refresh';
import { refresh } from '@/lib/refresh/refresh';
import {
  countOutcomes,
  getGauge,
  getPerson,
  inputsVersion,
  listPeople,
  listRecheckOutcomes,
  listTrace,
  loadJobs,
  personalExport,
  readingHistory,
  removePerson,
  saveFit,
  savePeople,
  saveReadings,
  verdictsFor,
  type Json,
} from '@/lib/store';
import { sessionHolder } from '@/lib/store/accounts';
import { database } from '@/lib/store/connection/database';
import { broughtUpToDate } from './brought-up-to-date';
import { freshStore, statement } from './fresh-store';
import { BY_COMMAND, fileNamed } from './invented-readings';
import { BOSS, BY_BOSS, BY_THEM, leaveTraces, named, READINGS, THEM, wholeDatabase } from './one-person';

const store = freshStore({
  filled: async (shop) => {
    await savePeople(shop, [THEM, BOSS], BY_COMMAND);
    await saveReadings(shop, READINGS, fileNamed('readings of QUI.csv'), BY_COMMAND);
  },
});

describe('the export of one person', () => {
  it('holds all that concerns the person, without a secret and without anybody else’s', async () => {
    await leaveTraces(store.shop);
    await broughtUpToDate(store.shop, { technicians: [{ technician: 'QUI', name: 'Tibor Quillow' }] });
    const document = await personalExport(store.shop, 'QUI');
    const own = READINGS.filter(({ technician }) => technician === 'QUI');
    expect(document).toMatchObject({
      person: THEM,
      account: { signInName: 'quillow', secondFactor: false },
      sessions: [{ browser: 'a browser', address: '10.0.0.7' }],
      invitations: [{}, {}],
      readingsEnteredOrChanged: [
        { job: 'J000001', revision: 2, value: 306, reason: 'misread' },
        { job: 'J9', revision: 1, value: 301, reason: null },
      ],
      outcomesRecorded: [{ job: 'J000001', setup: 'before-0', side: 'L', cause: 'gauge' }],
      verifications: [{ gauge: 'C0', passed: true }],
      missCostsSet: [{ cost: 12 }],
      trialReadings: [{ trial: 'Trial of QUI', value: 300 }],
      jobsThatCountToThem: [{ job: 'J000001' }],
      habits: [{ job: 'J000001', told: [['QUI', { setups: 4 }]] }],
      sheetsRevised: [{ revision: 1, reason: 'QUI found it' }],
      figures: { figures: [{ technician: 'QUI' }] },
      bayRoundsBegun: [{ job: 'J9', stage: 'before', attempt: 1 }],
      bayEntries: [
        { job: 'J9', kind: 'hang', device: 'aaa', entry: { setup: 'b1-1aaa', gauge: 'C0' } },
        ...[{ kind: 'read' }, { kind: 'equipment' }, { kind: 'skip' }],
      ],
      hungByThemEnteredByOthers: [{ job: 'J9', entry: { setup: 'b1-1bbb' } }],
    });
    const { setups, trace, reports, trials } = document as {
      setups: { readings: Json[] }[];
      trace: { action: string }[];
      reports: { told: Json[] }[];
      trials: { told: Json[] }[];
    };
    expect(setups.flatMap(({ readings }) => readings)).toHaveLength(own.length + 3);
    expect(trace.map(({ action }) => action)).toEqual(
      expect.arrayContaining([
        'added',
        'recorded',
        'verified',
        'corrected',
        'took up the invitation',
        'changed',
      ]),
    );
    // One database keeps an object's names in an order of its own.
    expect(new Set(reports[0]?.told)).toEqual(new Set([{ technician: 'QUI', sd: 0.4 }, 1]));
    expect(new Set(trials[0]?.told)).toEqual(new Set([['QUI', 'T0'], { by: 'QUI', point: 'QUI' }]));
    const text = JSON.stringify(document);
    for (const secret of ['scrypt', 'token', 'totp', 'spare', '"T2"', 'J000002'])
      expect(text).not.toContain(secret);
    expect(await personalExport(store.shop, 'NOBODY')).toBeNull();
  });
});

describe('a person who is removed', () => {
  it('is found nowhere in the database any more, by code, name or sign-in name', async () => {
    await leaveTraces(store.shop);
    await broughtUpToDate(store.shop, { technicians: [{ technician: 'QUI', name: 'Tibor Quillow' }] });
    const before = await wholeDatabase();
    for (const word of ['QUI', 'Tibor Quillow', 'quillow']) expect(before).toContain(word);
    await removePerson(store.shop, 'QUI', 'QUI asked for it', BY_BOSS);
    const after = (await wholeDatabase())
      .replace('QUIET', '')
      .replace('"point":"QUI"', '')
      .replace('\\"point\\":\\"QUI\\"', '');
    expect(after).not.toMatch(/QUI\b|tibor|quillow/i);
  });

  it('leaves the shop’s numbers, under a pseudonym', async () => {
    await leaveTraces(store.shop);
    await refresh(store.shop, 'this program');
    const [jobs, outcomes] = [await loadJobs(store.shop), await countOutcomes(store.shop, 'technician')];
    const figures = await currentFigures(store.shop);
    const code = await removePerson(store.shop, 'QUI', 'asked for it', BY_BOSS);
    expect(code).toMatch(/^former-\d{5}$/);
    const renamed = <T>(value: T) => JSON.parse(JSON.stringify(value).replaceAll('"QUI"', `"${code}"`)) as T;
    expect(await loadJobs(store.shop)).toEqual(renamed(jobs));
    expect(await countOutcomes(store.shop, 'technician')).toEqual(
      expect.arrayContaining([...renamed(outcomes)]),
    );
    expect(await verdictsFor(store.shop, {})).toEqual([]);
    await refresh(store.shop, 'this program');
    expect(await verdictsFor(store.shop, {})).toHaveLength(7);
    const again = await currentFigures(store.shop);
    const of = (all: typeof figures, who: string) =>
      all?.figures.technicians.find(({ technician }) => technician === who);
    const [hand, same] = [of(figures, 'QUI'), of(again, code)];
    expect(same).toMatchObject({
      setups: hand?.setups,
      jobs: hand?.jobs,
      repeatability: hand?.repeatability,
    });
    // Hands are summed in the order of their codes: the last bits may differ.
    expect(same?.bias.mean).toBeCloseTo(hand?.bias.mean ?? NaN, 9);
    expect(await wholeDatabase()).not.toMatch(/\bQUI(?!ET|\\?")|tibor|quillow/i);
    const [outcome] = await listRecheckOutcomes(store.shop);
    expect(outcome).toMatchObject({ by: code, note: `${code} hung it again (QUIET)` });
    expect((await getGauge(store.shop, 'C0'))?.verifications).toMatchObject([
      { by: code, note: `by ${code}` },
    ]);
    const revisions = await readingHistory(store.shop, { job: 'J000001', changed: true });
    expect(revisions.flatMap(({ reason }) => reason ?? [])).toEqual([`${code} misread it`, 'misread']);
    const { rows } = await listTrace(store.shop, { person: code });
    expect(rows[0]).toMatchObject({ action: 'removed', by: 'GRE', concerns: code, reason: 'asked for it' });
    expect(rows.filter(({ by }) => by === code).length).toBeGreaterThan(3);
  });

  it('cannot sign in, be changed or be removed again; readings and trace are append-only as before', async () => {
    await leaveTraces(store.shop);
    const { token } = await database().session.findFirstOrThrow();
    expect(await sessionHolder(token)).toMatchObject({ person: { code: 'QUI' } });
    const code = await removePerson(store.shop, 'QUI', 'asked for it', BY_BOSS);
    expect(await sessionHolder(token)).toBeNull();
    for (const table of ['user', 'session', 'account', 'twoFactor', 'invitation', 'verification'] as const)
      expect(await (database()[table] as { count: () => Promise<number> }).count(), table).toBe(0);
    expect(await getPerson(store.shop, code)).toEqual({ code, name: '', role: 'technician', active: false });
    await expect(savePeople(store.shop, [{ ...THEM, code }], BY_BOSS)).rejects.toThrow(/was removed/);
    await expect(removePerson(store.shop, code, 'again', BY_BOSS)).rejects.toThrow(/was removed already/);
    await expect(removePerson(store.shop, 'QUI', 'again', BY_BOSS)).rejects.toThrow(
      /nobody with the code QUI/,
    );
    for (const table of ['Reading', 'Trace'])
      await expect(statement(`UPDATE "${table}" SET "reason" = 'x'`)).rejects.toThrow(/only ever added/);
    await expect(statement(`UPDATE "BayEntry" SET "conflict" = 'x'`)).rejects.toThrow(/only ever added/);
  });

  it('is a new person to a file that names the old code, which is refused for setups that are stored', async () => {
    const code = await removePerson(store.shop, 'QUI', 'asked for it', BY_BOSS);
    await expect(saveReadings(store.shop, READINGS, fileNamed('again'), BY_COMMAND)).rejects.toThrow(
      new RegExp(`was hung by ${code}, this line says QUI`),
    );
    const fresh = READINGS.map((one) => ({ ...one, job: `N${one.job}` }));
    expect(await saveReadings(store.shop, fresh, fileNamed('new'), BY_COMMAND)).toMatchObject({
      newPeople: ['QUI'],
    });
    expect((await listPeople(store.shop)).map((person) => person.code)).toEqual([
      'GRE',
      'QUI',
      'T0',
      'T2',
      code,
    ]);
    expect(await saveReadings(store.shop, named(code), fileNamed('download'), BY_COMMAND)).toMatchObject({
      added: 0,
    });
  });

  it('is not the last active manager, needs a reason, and leaves everything as it was where that is refused', async () => {
    const before = await wholeDatabase();
    await expect(removePerson(store.shop, 'GRE', 'asked for it', BY_BOSS)).rejects.toThrow(
      /Nobody would be left/,
    );
    await expect(removePerson(store.shop, 'QUI', ' ', BY_BOSS)).rejects.toThrow(/Say why/);
    expect(await wholeDatabase()).toEqual(before);
    await savePeople(store.shop, [{ ...THEM, role: 'manager' }], BY_BOSS);
    await removePerson(store.shop, 'GRE', 'left', BY_BOSS);
    await expect(removePerson(store.shop, 'QUI', 'left', BY_THEM)).rejects.toThrow(/Nobody would be left/);
  });

  it('does not come back with what was being learned meanwhile', async () => {
    const version = await inputsVersion(store.shop);
    await removePerson(store.shop, 'QUI', 'asked for it', BY_BOSS);
    const learned = { parameters: { QUI: 1 }, figures: [] };
    await expect(saveFit(store.shop, { inputsVersion: version, ...learned })).rejects.toThrow(
      /learned again/,
    );
    await saveFit(store.shop, {
      inputsVersion: await inputsVersion(store.shop),
      parameters: {},
      figures: [],
    });
  });
});
