import { describe, expect, it } from 'vitest';
import {
  getShop,
  missCosts,
  provedHeights,
  recordOutcome,
  roundsWithoutProof,
  savePeople,
  saveReadings,
  saveRoundProofs,
  saveShop,
  setMissCost,
  type RoundProofRecord,
} from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const store = freshStore({
  filled: (shop) => saveReadings(shop, regularShop(2), fileNamed('two.csv'), BY_COMMAND),
});
const FORMAT = 1;

const proof = (job: string, change: Partial<RoundProofRecord> = {}): RoundProofRecord => ({
  job,
  stage: 'before',
  attempt: 1,
  version: 1,
  ahead: true,
  heights: [
    {
      setup: 'before-0',
      point: 'A',
      side: 'L',
      p: { neither: 0.1, gauge: 0.8, body: 0.05, both: 0.05 },
      proved: 'gauge',
      by: 'rehang',
    },
  ],
  ...change,
});

describe('proofs', () => {
  it('count in the month of the shop’s time zone, also where that is changed', async () => {
    await saveRoundProofs(store.shop, FORMAT, [proof('J000000')]);
    const months = async () => (await provedHeights(store.shop)).map(({ month }) => month);
    const before = await months();
    // What is read at the first hour of a month in Auckland belongs to the month before elsewhere.
    const hung = await database().setup.findFirstOrThrow({ where: { label: 'before-0' } });
    await database().setup.updateMany({
      where: { id: hung.id },
      data: { hungAt: new Date('2026-01-31T20:00:00Z') },
    });
    expect(before).toHaveLength(1);
    await saveShop(store.shop, { timeZone: 'Pacific/Auckland' }, BY_COMMAND);
    expect(await months()).toEqual(['2026-02']);
    await saveShop(store.shop, { timeZone: 'UTC' }, BY_COMMAND);
    expect(await months()).toEqual(['2026-01']);
  });

  it('are waited for by every round until it was looked through, and again when an outcome is recorded', async () => {
    expect(await roundsWithoutProof(store.shop, FORMAT)).toHaveLength(4);
    await saveRoundProofs(store.shop, FORMAT, [proof('J000000'), proof('J000001', { heights: [] })]);
    expect(await roundsWithoutProof(store.shop, FORMAT)).toHaveLength(2);
    expect(await roundsWithoutProof(store.shop, FORMAT + 1)).toHaveLength(4);
    await recordOutcome(
      store.shop,
      {
        ...{ job: 'J000001', setup: 'before-0', side: 'L', cause: 'gauge', by: 'T0', note: null },
      },
      BY_COMMAND,
    );
    expect(await roundsWithoutProof(store.shop, FORMAT)).toContainEqual({
      ...{ job: 'J000001', stage: 'before', attempt: 1, version: 2 },
    });
  });

  it('come back as they were kept, in the month of the setup, and are replaced whole', async () => {
    await saveRoundProofs(store.shop, FORMAT, [proof('J000000'), proof('J000009')]);
    expect(await provedHeights(store.shop)).toEqual([
      {
        ...{ job: 'J000000', stage: 'before', attempt: 1, month: '2026-01', ahead: true },
        ...{ p: { neither: 0.1, gauge: 0.8, body: 0.05, both: 0.05 }, proved: 'gauge', by: 'rehang' },
      },
    ]);
    await saveRoundProofs(store.shop, FORMAT, [proof('J000000', { heights: [] })]);
    expect(await provedHeights(store.shop)).toEqual([]);
  });
});

describe('the cost of missing damage', () => {
  it('is nobody’s word until it is set; then the last one counts and all stay on record', async () => {
    await savePeople(store.shop, [{ code: 'M', name: 'Mira', role: 'manager', active: true }], BY_COMMAND);
    expect((await getShop()).missCost).toBeNull();
    await setMissCost(store.shop, { cost: 19, at: 1000 }, { person: 'M', via: 'page' });
    await setMissCost(store.shop, { cost: 4, at: 2000 }, BY_COMMAND);
    expect((await getShop()).missCost).toBe(4);
    expect(await missCosts(store.shop)).toEqual([
      { cost: 4, by: null, at: 2000 },
      { cost: 19, by: 'M', at: 1000 },
    ]);
  });

  it('is refused out of its range, and from somebody the shop does not know', async () => {
    await expect(setMissCost(store.shop, { cost: 1 }, BY_COMMAND)).rejects.toThrow(/from 3 to 99/);
    await expect(setMissCost(store.shop, { cost: Number.NaN }, BY_COMMAND)).rejects.toThrow(/from 3 to 99/);
    await expect(setMissCost(store.shop, { cost: 9 }, { person: 'X', via: 'page' })).rejects.toThrow(
      /nobody with the code X/,
    );
    expect(await missCosts(store.shop)).toEqual([]);
  });
});
