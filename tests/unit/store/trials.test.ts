import { beforeEach, describe, expect, it } from 'vitest';
import {
  closeTrial,
  correctTrialReading,
  createTrial,
  enterTrialReading,
  getGauge,
  getTrial,
  listTrace,
  listTrials,
  recordVerification,
  saveGauges,
  savePeople,
  type Actor,
  type NewVerification,
  type TrialPlan,
} from '@/lib/store';
import { plannedReadings } from '@/lib/store/trials/plan';
import { freshStore } from './fresh-store';
import { BY_COMMAND } from './invented-readings';

const store = freshStore();
const TRAINER: Actor = { person: 'TRA', via: 'page' };

const plan = (change: Partial<TrialPlan> = {}): TrialPlan => ({
  asked: { question: 'bias', difference: 1 },
  points: [
    { name: 'A', value: 300, tolerance: 3 },
    { name: 'B', value: 412.5, tolerance: 3 },
  ],
  people: ['ONE', 'TWO'],
  setups: 2,
  readings: 2,
  seed: 7,
  expected: { reading: 0.4, setting: 1 },
  ...change,
});

const traced = async (kind: string) =>
  (await listTrace(store.shop, { kind })).rows.map(
    ({ action, subject, by, concerns, before, after, reason }) => ({
      ...{ action, subject, by, concerns, before, after, reason },
    }),
  );

beforeEach(async () => {
  const technician = { role: 'technician', active: true } as const;
  await savePeople(
    store.shop,
    [
      { ...technician, code: 'ONE', name: 'One' },
      { ...technician, code: 'TWO', name: 'Two' },
      { ...technician, code: 'OLD', name: 'Old', active: false },
      { code: 'TRA', name: 'Trainer', role: 'trainer', active: true },
    ],
    BY_COMMAND,
  );
});

describe('a trial', () => {
  it('is kept as it was planned, and traced without naming who takes part', async () => {
    const id = await createTrial(store.shop, { name: ' Spring ', plan: plan() }, TRAINER);
    expect(await listTrials(store.shop)).toEqual([
      {
        ...{ id, name: 'Spring', plan: plan(), closedAt: null, entered: 0 },
        createdAt: expect.any(Number) as number,
      },
    ]);
    expect(plannedReadings(plan())).toBe(16);
    const [row] = await traced('trial');
    expect(row).toMatchObject({ action: 'planned', subject: `trial ${id}`, by: 'TRA' });
    expect(JSON.stringify(row?.after)).not.toMatch(/ONE|TWO/);
  });

  it('is refused where its plan is none, its name is taken, or somebody in it does not work here', async () => {
    const refused = (change: Partial<TrialPlan>, name = 'Spring') =>
      expect(createTrial(store.shop, { name, plan: plan(change) }, TRAINER)).rejects;
    await refused({ setups: 0 }).toThrow(/plan cannot be kept: setups/);
    await refused({ points: [] }).toThrow(/points/);
    await refused({ people: ['ONE', 'ONE'] }).toThrow(/twice/);
    await refused({ people: ['ONE', 'OLD'] }).toThrow(/Nobody with the code OLD/);
    await refused({}, ' ').toThrow(/needs a name/);
    await createTrial(store.shop, { name: 'Spring', plan: plan() }, TRAINER);
    await refused({}).toThrow(/There is a trial Spring already/);
    expect(await listTrials(store.shop)).toHaveLength(1);
  });

  it('takes one value a place: the same again changes nothing, another is refused', async () => {
    const id = await createTrial(store.shop, { name: 'Spring', plan: plan() }, TRAINER);
    const entry = { run: 3, repeat: 2, value: 301.4, by: 'ONE' };
    await enterTrialReading(store.shop, id, entry, TRAINER);
    await enterTrialReading(store.shop, id, entry, TRAINER);
    await expect(enterTrialReading(store.shop, id, { ...entry, value: 302 }, TRAINER)).rejects.toThrow(
      /Run 3, reading 2 was entered already/,
    );
    expect((await getTrial(store.shop, id))?.readings).toEqual([
      { ...entry, at: expect.any(Number) as number },
    ]);
    expect((await traced('trial')).map(({ action }) => action)).toEqual(['entered', 'planned']);
  });

  it('has no other places than those of its plan', async () => {
    const id = await createTrial(store.shop, { name: 'Spring', plan: plan() }, TRAINER);
    const entry = { value: 300, by: 'ONE' };
    for (const place of [
      { run: 9, repeat: 1 },
      { run: 0, repeat: 1 },
      { run: 1, repeat: 3 },
      { run: 1.5, repeat: 1 },
    ])
      await expect(enterTrialReading(store.shop, id, { ...entry, ...place }, TRAINER)).rejects.toThrow(
        RangeError,
      );
    await expect(
      enterTrialReading(store.shop, id + 1, { ...entry, run: 1, repeat: 1 }, TRAINER),
    ).rejects.toThrow(/no trial/);
  });

  it('is corrected with a reason, and the trace keeps the earlier value', async () => {
    const id = await createTrial(store.shop, { name: 'Spring', plan: plan() }, TRAINER);
    const place = { run: 1, repeat: 1 };
    const correction = { ...place, value: 300.5, reason: 'digits exchanged' };
    await expect(correctTrialReading(store.shop, id, correction, TRAINER)).rejects.toThrow(/not entered yet/);
    await enterTrialReading(store.shop, id, { ...place, value: 305, by: 'TWO' }, TRAINER);
    await expect(
      correctTrialReading(store.shop, id, { ...correction, reason: ' ' }, TRAINER),
    ).rejects.toThrow(/Say why/);
    await correctTrialReading(store.shop, id, correction, TRAINER);
    expect((await getTrial(store.shop, id))?.readings[0]?.value).toBe(300.5);
    expect((await traced('trial'))[0]).toEqual({
      ...{ action: 'corrected', subject: `trial ${id}, run 1, reading 1`, by: 'TRA', concerns: 'TWO' },
      ...{ before: { value: 305 }, after: { value: 300.5 }, reason: 'digits exchanged' },
    });
  });

  it('takes nothing any more once it is closed', async () => {
    const id = await createTrial(store.shop, { name: 'Spring', plan: plan() }, TRAINER);
    await closeTrial(store.shop, id, TRAINER);
    const entry = { run: 1, repeat: 1, value: 300, by: 'ONE' };
    await expect(enterTrialReading(store.shop, id, entry, TRAINER)).rejects.toThrow(/Spring is closed/);
    await expect(closeTrial(store.shop, id, TRAINER)).rejects.toThrow(/closed/);
    expect((await getTrial(store.shop, id))?.closedAt).not.toBeNull();
    expect((await traced('trial'))[0]?.action).toBe('closed');
  });
});

describe('a gauge', () => {
  const gauge = {
    tag: 'C1',
    kind: 'centering',
    fixedMark: 14,
    state: 'in-service',
    verifiedAt: null,
  } as const;
  const state = async () => (await getGauge(store.shop, 'C1'))?.state;
  const drop = {
    gauge: 'C1',
    kind: 'reported-dropped',
    error: null,
    passed: false,
    by: 'ONE',
    note: null,
  } as const;
  const measured: NewVerification = {
    ...{ gauge: 'C1', at: 0, reference: 1000, uncertainty: 0.1, error: 0.05, passed: true, by: 'TRA' },
    kind: 'reference-length',
    note: null,
  };

  beforeEach(() => saveGauges(store.shop, [gauge], BY_COMMAND));

  it('that was reported dropped is out of service until a verification with a measured error passes', async () => {
    await recordVerification(store.shop, { ...drop, at: 1000 }, TRAINER);
    expect(await getGauge(store.shop, 'C1')).toMatchObject({ state: 'out-of-service', verifiedAt: null });
    const look = { ...drop, kind: 'looked-at', passed: true } as const;
    await recordVerification(store.shop, { ...look, at: 2000 }, TRAINER);
    expect(await state()).toBe('out-of-service');
    await recordVerification(
      store.shop,
      { ...measured, error: 0.4, passed: false, decides: false, at: 3000 },
      TRAINER,
    );
    expect(await state()).toBe('out-of-service');
    await recordVerification(store.shop, { ...measured, at: 4000 }, TRAINER);
    expect(await getGauge(store.shop, 'C1')).toMatchObject({ state: 'in-service', verifiedAt: 4000 });
    expect((await traced('gauge')).map(({ action }) => action)).toEqual([
      ...['verified', 'verified', 'verified', 'reported dropped', 'added'],
    ]);
  });

  it('is not brought back by a verification from before the drop', async () => {
    await recordVerification(store.shop, { ...drop, at: 5000 }, TRAINER);
    await recordVerification(store.shop, { ...measured, at: 4000 }, TRAINER);
    expect(await state()).toBe('out-of-service');
  });

  it('stays in service where a verification decides nothing, and keeps what it was held against', async () => {
    const unclear: NewVerification = { ...measured, error: 0.45, passed: false, decides: false, at: 1000 };
    await recordVerification(store.shop, unclear, TRAINER);
    const kept = await getGauge(store.shop, 'C1');
    expect(kept).toMatchObject({ state: 'in-service', verifiedAt: null });
    const { decides: _, ...rest } = unclear;
    expect(kept?.verifications).toEqual([rest]);
  });

  it('cannot be reported dropped and pass', async () => {
    await expect(recordVerification(store.shop, { ...drop, passed: true, at: 1 }, TRAINER)).rejects.toThrow(
      /has not passed/,
    );
  });
});
