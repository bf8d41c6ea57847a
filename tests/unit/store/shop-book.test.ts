import { describe, expect, it } from 'vitest';
import {
  addShop,
  getGauge,
  getPerson,
  getSheet,
  getShop,
  listGauges,
  listPeople,
  recordVerification,
  saveGauges,
  savePeople,
  saveSheet,
  saveShop,
  shopOfId,
  type Gauge,
  type Sheet,
} from '@/lib/store';
import { freshStore } from './fresh-store';
import { BY_COMMAND } from './invented-readings';

const store = freshStore();
const gauge: Gauge = { tag: 'C1', kind: 'centering', fixedMark: 14, state: 'in-service', verifiedAt: null };

describe('the shop', () => {
  it('is made once, with plain defaults, and can be told its name and zone', async () => {
    expect(await getShop()).toMatchObject({
      id: store.shop,
      timeZone: 'UTC',
      defaultTolerance: 3,
      inputsVersion: 0,
    });
    await saveShop(store.shop, { name: 'Lakeside', timeZone: 'Europe/Zurich' }, BY_COMMAND);
    expect(await getShop()).toMatchObject({ id: store.shop, name: 'Lakeside', timeZone: 'Europe/Zurich' });
    await expect(saveShop(store.shop, { timeZone: 'Europe/Nowhere' }, BY_COMMAND)).rejects.toThrow(
      /no time zone/,
    );
    await addShop('Hilltop', 'UTC');
    await expect(saveShop(store.shop, { name: 'Hilltop' }, BY_COMMAND)).rejects.toThrow(
      'There is a shop of the name Hilltop already.',
    );
    expect((await shopOfId(store.shop))?.name).toBe('Lakeside');
  });
});

describe('people', () => {
  it('are known by their code, and change without doubling', async () => {
    const ada = { code: 'A', name: 'Ada', role: 'technician', active: true } as const;
    await savePeople(store.shop, [ada], BY_COMMAND);
    await savePeople(store.shop, [{ ...ada, role: 'trainer' }], BY_COMMAND);
    expect(await listPeople(store.shop)).toEqual([{ ...ada, role: 'trainer' }]);
    expect(await getPerson(store.shop, 'A')).toEqual({ ...ada, role: 'trainer' });
    expect(await getPerson(store.shop, 'B')).toBeNull();
  });
});

describe('gauges', () => {
  it('go out of service when a verification fails, and back when one passes', async () => {
    await saveGauges(store.shop, [gauge], BY_COMMAND);
    await savePeople(store.shop, [{ code: 'A', name: 'Ada', role: 'trainer', active: true }], BY_COMMAND);
    const failed = { gauge: 'C1', at: 1000, error: 2.1, passed: false, by: 'A', note: 'dropped' };
    await recordVerification(store.shop, failed, BY_COMMAND);
    expect(await getGauge(store.shop, 'C1')).toEqual({
      ...gauge,
      state: 'out-of-service',
      verifiedAt: 1000,
      verifications: [{ ...failed, kind: 'reference-length', reference: null, uncertainty: null }],
    });
    await recordVerification(
      store.shop,
      { ...failed, at: 2000, error: 0.1, passed: true, note: null },
      BY_COMMAND,
    );
    expect(await listGauges(store.shop)).toEqual([{ ...gauge, verifiedAt: 2000 }]);
  });

  it('are not moved by a verification that was entered late', async () => {
    await saveGauges(store.shop, [{ ...gauge, verifiedAt: 5000 }], BY_COMMAND);
    await recordVerification(
      store.shop,
      {
        gauge: 'C1',
        at: 1000,
        error: 3,
        passed: false,
        by: null,
        note: null,
      },
      BY_COMMAND,
    );
    expect(await listGauges(store.shop)).toEqual([{ ...gauge, verifiedAt: 5000 }]);
  });

  it('have to be known, as has whoever verified them', async () => {
    const verification = { gauge: 'C1', at: 1000, error: null, passed: true, by: 'A', note: null };
    await expect(recordVerification(store.shop, verification, BY_COMMAND)).rejects.toThrow(/no gauge C1/);
    await saveGauges(store.shop, [gauge], BY_COMMAND);
    await expect(recordVerification(store.shop, verification, BY_COMMAND)).rejects.toThrow(
      /nobody with the code A/,
    );
  });
});

describe('a sheet', () => {
  const height = {
    quantity: 'height',
    point: 'K',
    side: 'L',
    section: 'front',
    station: 300,
    zero: false,
    nominal: 250,
    tolerance: 3,
  } as const;
  const point = {
    letter: 'K',
    side: 'L',
    description: 'rail, second hole',
    feature: 'hole',
    section: 'front',
    station: 300,
    zero: false,
    halfWidth: 480,
  } as const;
  const sheet: Sheet = { name: 'S1', dimensions: [height], points: [point] };

  it('is kept with its points and dimensions, and can grow', async () => {
    await saveSheet(store.shop, sheet, BY_COMMAND);
    expect(await getSheet(store.shop, 'S1')).toEqual(sheet);
    const right = { ...height, side: 'R' } as const;
    await saveSheet(
      store.shop,
      {
        ...sheet,
        dimensions: [height, right],
        points: [{ ...point, halfWidth: 481 }],
      },
      BY_COMMAND,
    );
    expect(await getSheet(store.shop, 'S1')).toEqual({
      name: 'S1',
      dimensions: [height, right],
      points: [{ ...point, halfWidth: 481 }],
    });
    expect(await getSheet(store.shop, 'S2')).toBeNull();
  });

  it('does not change a value that readings were taken against', async () => {
    await saveSheet(store.shop, sheet, BY_COMMAND);
    const other = { ...sheet, dimensions: [{ ...height, nominal: 251 }] };
    await expect(saveSheet(store.shop, other, BY_COMMAND)).rejects.toThrow(
      /states height K L already, as 250 ± 3 mm/,
    );
  });
});
