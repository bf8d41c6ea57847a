import {
  beginBayRound,
  correctReading,
  recordOutcome,
  recordVerification,
  setMissCost,
  takeBayEntries,
  type Person,
} from '@/lib/store';
import { invite, takeUpInvitation } from '@/lib/store/accounts';
import { database } from '@/lib/store/connection/database';
import { tablesOf } from '@/lib/store/copying/tables';
import { lastSchema } from '@/lib/store/migrations/migration-list';
import { Device, dimension } from './bay-device';
import { regularShop } from './invented-readings';

export const THEM: Person = { code: 'QUI', name: 'Tibor Quillow', role: 'technician', active: true };
export const BOSS: Person = { code: 'GRE', name: 'Greta Greyfeather', role: 'manager', active: true };
export const BY_THEM = { person: 'QUI', via: 'page' } as const;
export const BY_BOSS = { person: 'GRE', via: 'page' } as const;
const SIGN_IN = { signInName: 'quillow', passwordHash: 'scrypt of a secret' };
const PLACE = { job: 'J000001', setup: 'before-0', quantity: 'height', point: 'A', side: 'L' } as const;

export const named = (code: string) =>
  regularShop(3).map((one) => ({ ...one, technician: one.technician.replace('T1', code) }));
export const READINGS = named('QUI');

/** Everything of every table, as text. */
export async function wholeDatabase(): Promise<string> {
  const parts: string[] = [];
  for (const { name, key } of tablesOf(lastSchema('sqlite') ?? '')) {
    const order = key.map((column) => `"${column}"`).join(', ');
    const rows = await database().$queryRawUnsafe<object[]>(`SELECT * FROM "${name}" ORDER BY ${order}`);
    const text = JSON.stringify(rows, (_, cell: unknown) => (typeof cell === 'bigint' ? Number(cell) : cell));
    parts.push(`${name}: ${text}`);
  }
  return parts.join('\n');
}

/** Traces of one person in every table that can hold one; both people and the readings are there already. */
export async function leaveTraces(shop: number): Promise<void> {
  const { id } = await database().person.findUniqueOrThrow({
    where: { shopId_code: { shopId: shop, code: 'QUI' } },
  });
  await takeUpInvitation(await invite(shop, 'QUI', BY_BOSS), SIGN_IN);
  await invite(shop, 'QUI', BY_BOSS);
  const user = await database().user.findFirstOrThrow();
  const [now, later] = [new Date(), new Date(Date.now() + 1e6)];
  const dated = { createdAt: now, updatedAt: now, expiresAt: later };
  await database().session.create({
    data: {
      id: 's',
      token: 'session token',
      ...dated,
      userId: user.id,
      userAgent: 'a browser',
      ipAddress: '10.0.0.7',
    },
  });
  await database().twoFactor.create({
    data: { id: 't', secret: 'totp secret', backupCodes: 'spare', userId: user.id },
  });
  await database().verification.create({ data: { id: 'v', identifier: 'way in', value: user.id, ...dated } });
  await recordOutcome(shop, { ...PLACE, cause: 'gauge', note: 'QUI hung it again (QUIET)' }, BY_THEM);
  await recordVerification(
    shop,
    { gauge: 'C0', at: 1000, error: 0.2, passed: true, by: 'QUI', note: 'by Tibor Quillow' },
    BY_THEM,
  );
  await correctReading(shop, { ...PLACE, repeat: 1, value: 306, reason: 'QUI misread it' }, BY_BOSS);
  await correctReading(shop, { ...PLACE, side: 'R', repeat: 1, value: 306, reason: 'misread' }, BY_THEM);
  await setMissCost(shop, { cost: 12 }, BY_THEM);
  const plan = { technicians: ['QUI', 'T0'], runs: [{ by: 'QUI', point: 'QUI' }], points: [{ name: 'K' }] };
  const trial = await database().trial.create({
    data: { shopId: shop, name: 'Trial of QUI', plan, createdAt: now },
  });
  await database().trialReading.create({
    data: { trialId: trial.id, run: 1, repeat: 1, shopId: shop, value: 300, personId: id, at: now },
  });
  await database().scheduledReport.create({
    data: {
      shopId: shop,
      dueAt: now,
      startedAt: now,
      document: { technicians: [{ technician: 'QUI', sd: 0.4 }], by: { QUI: 1 } },
    },
  });
  await database().apiToken.create({
    data: { shopId: shop, name: 'Laptop of QUI', digest: 'd'.repeat(64), scopes: '', createdAt: now },
  });
  await database().sheetRevision.create({
    data: {
      ...{ sheetId: (await database().sheet.findFirstOrThrow()).id, revision: 1, shopId: shop, personId: id },
      ...{ document: {}, reason: 'QUI found it', at: now },
    },
  });
  await leaveTracesAtTheBay(shop);
  const { id: jobId } = await database().job.findFirstOrThrow({ where: { number: 'J000001' } });
  const { id: fitId } = await database().shopFit.create({
    data: { shopId: shop, inputsVersion: 1, parameters: {}, figures: {}, fittedAt: now },
  });
  await database().jobShare.create({
    data: {
      ...{ jobId, shopId: shop, fitId, jobVersion: 1, madeBy: 'this program' },
      document: { begunAt: 0, sheet: null, rounds: [], tallies: [['QUI', '{"setups":4}']] },
    },
  });
}

/** A round begun, entries with their words, and a hanging that somebody else entered. */
async function leaveTracesAtTheBay(shop: number): Promise<void> {
  const begun = { job: 'J9', sheet: 'S1', stage: 'before', attempt: 1, clearance: 100 } as const;
  const round = await beginBayRound(shop, begun, 'QUI', BY_THEM);
  const [own, others] = [new Device('aaa'), new Device('bbb')];
  own.hang('b1-1aaa', { gauge: 'C0' });
  own.read('b1-1aaa', dimension('A', 'L'), 301);
  own.make({ kind: 'equipment', check: 'same-tips', ok: false, note: 'told by Tibor Quillow' });
  own.make({ kind: 'skip', step: 'lengths', place: 'lengths K-N 1200', reason: 'QUI had no time' });
  others.hang('b1-1bbb', { gauge: 'C0', hand: 'QUI' });
  others.make({ kind: 'skip', step: 'struts', place: null, reason: 'asked QUI' });
  await takeBayEntries(shop, round, own.made, { by: 'QUI', forOthers: false }, BY_THEM);
  await takeBayEntries(shop, round, others.made, { by: 'GRE', forOthers: true }, BY_BOSS);
}
