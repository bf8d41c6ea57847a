import { beforeEach, describe, expect, it } from 'vitest';
import { signalsOf } from '@/lib/access';
import type { SignalsAnswer } from '@/lib/assess/answers';
import type { Signal, Subject } from '@/lib/assess/signals';
import { saveFit, saveFitAnswers, savePeople, type Json, type Person } from '@/lib/store';
import { freshStore } from '../store/fresh-store';
import { BY_COMMAND } from '../store/invented-readings';
import { viewerOf } from './viewer-of';

const store = freshStore();

const signal = (kind: Subject['kind'], name: string | null): Signal => ({
  ...{ what: 'setting-bias', subject: { kind, name }, direction: 'worse', noticed: '2026-03' },
  ...{ began: null, size: null, p: 0.001, evidence: `${kind} ${name}`, next: 'Hang the same gauges.' },
});

const answer: SignalsAnswer = {
  signals: [
    signal('shop', null),
    signal('gauge', 'ONE'),
    signal('technician', 'ONE'),
    signal('technician', 'TWO'),
  ],
  design: {
    ...{ falseAlarmPeriods: 24, charts: 8, runLength: 192, falseAlarmJobs: null, lambda: 0.2, k: 0.5 },
    method: '',
  },
  quiet: null,
};

const person = (code: string, role: Person['role'] = 'technician'): Person => ({
  ...{ code, name: code, role, active: true },
});

beforeEach(async () => {
  await savePeople(store.shop, [person('ONE'), person('TWO'), person('TRA', 'trainer')], BY_COMMAND);
  const { id } = await saveFit(store.shop, { inputsVersion: 1, parameters: {}, figures: {} });
  await saveFitAnswers(store.shop, id, { signals: JSON.parse(JSON.stringify(answer)) as Json });
});

describe('what stands out of chance of one hand or gauge', () => {
  it('is the hand’s own for a technician, and nothing of a colleague’s', async () => {
    const one = await viewerOf('ONE');
    expect(await signalsOf(one, 'technician', 'ONE')).toEqual([signal('technician', 'ONE')]);
    expect(await signalsOf(one, 'technician', 'TWO')).toEqual([]);
  });

  it('is anybody’s for the trainer, and a gauge’s for all who hang it', async () => {
    const trainer = await viewerOf('TRA');
    expect(await signalsOf(trainer, 'technician', 'TWO')).toEqual([signal('technician', 'TWO')]);
    expect(await signalsOf(trainer, 'technician', 'NEW')).toEqual([]);
    const one = await viewerOf('ONE');
    expect(await signalsOf(one, 'gauge', 'ONE')).toEqual([signal('gauge', 'ONE')]);
  });
});
