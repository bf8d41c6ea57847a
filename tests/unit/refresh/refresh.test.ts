import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { assessRound, firstTimeOutcomes, learn, MeasuredSums, technicianFigures } from '@/lib/assess';
import { collapse } from '@/lib/measure';
import { metricsText } from '@/lib/observe';
import { currentFigures, currentLearned, refreshSoon, roundVerdicts } from '@/lib/refresh';
import { followJob } from '@/lib/refresh/follow-job';
import { refresh } from '@/lib/refresh/refresh';
import {
  countOutcomes,
  currentFit,
  getJobRow,
  jobsWithoutOutcome,
  roundsWithoutProof,
  roundsWithoutVerdict,
  saveReadings,
} from '@/lib/store';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from '@/tests/unit/store/invented-readings';

const readings = regularShop(6);
const NO_SHOP = { databaseUp: true, figuresAge: null, stale: false, files: 0, readings: 0 };
const jobs = collapse(readings);
const saveSix = (shop: number) => saveReadings(shop, readings, fileNamed('six.csv'), BY_COMMAND);

describe('refresh', () => {
  const store = freshStore({
    filled: async (shop) => {
      await saveSix(shop);
      await refresh(shop, 'this program');
    },
  });

  it('gives pages what is computed from the readings themselves', async () => {
    const learned = learn(jobs);
    expect(await currentLearned(store.shop)).toMatchObject({ learned, stale: false });
    const figures = await currentFigures(store.shop);
    expect(figures?.figures.technicians).toEqual(technicianFigures(MeasuredSums.of(jobs), learned));
    const verdicts = await roundVerdicts(store.shop, { job: 'J000002' });
    const rounds = jobs.find((job) => job.job === 'J000002')?.rounds.toReversed() ?? [];
    expect(verdicts.map(({ at: _, ...verdict }) => verdict)).toEqual(
      rounds.map((round) => assessRound(round, learned)),
    );
    const outcomes = firstTimeOutcomes(jobs);
    expect(await countOutcomes(store.shop, 'shop')).toEqual([
      { key: '', jobs: outcomes.length, right: outcomes.filter(({ right }) => right).length },
    ]);
  });

  it('does nothing where nothing changed', async () => {
    const before = await currentFit(store.shop);
    await refresh(store.shop, 'this program');
    expect(await currentFit(store.shop)).toEqual(before);
  });

  it('learns again when the program that computes is another', async () => {
    const before = await currentFit(store.shop);
    await refresh(store.shop, 'a later program');
    expect((await currentFit(store.shop))?.id).toBeGreaterThan(before?.id ?? Infinity);
  });

  it('says that a fit is stale until it was made again from the new readings', async () => {
    const more = regularShop(7).filter((reading) => reading.job === 'J000006');
    await saveReadings(store.shop, more, fileNamed('more.csv'), BY_COMMAND);
    expect((await currentLearned(store.shop))?.stale).toBe(true);
    expect(await roundVerdicts(store.shop, { job: 'J000006' })).toEqual([]);
    await refresh(store.shop, 'this program');
    expect((await currentLearned(store.shop))?.stale).toBe(false);
    expect(await roundVerdicts(store.shop, { job: 'J000006' })).toHaveLength(2);
    expect((await getJobRow(store.shop, 'J000006'))?.outcome).not.toBe('unknown');
  });

  it('leaves nothing waiting', async () => {
    const fit = await currentFit(store.shop);
    expect(await roundsWithoutVerdict(store.shop, fit?.id ?? 0)).toEqual([]);
    expect(await jobsWithoutOutcome(store.shop)).toEqual([]);
  });
});

describe('one round more than the many that were learned from', () => {
  const many = regularShop(30);
  const last = many.filter(({ job, stage }) => job === 'J000029' && stage === 'after');
  const store = freshStore({
    filled: async (shop) => {
      const first = many.filter((reading) => !last.includes(reading));
      await saveReadings(shop, first, fileNamed('many.csv'), BY_COMMAND);
      await refresh(shop, 'this program');
    },
  });

  it('refresh judges a round among many by what was learned before it, and counts it in the figures', async () => {
    const counted = async () =>
      (await currentFigures(store.shop))?.figures.technicians.map((one) => one.readings);
    const before = await currentLearned(store.shop);
    const readingsBefore = await counted();
    await saveReadings(store.shop, last, fileNamed('last.csv'), BY_COMMAND);
    expect((await currentLearned(store.shop))?.stale).toBe(true);
    await refresh(store.shop, 'this program');
    const after = await currentLearned(store.shop);
    expect(before).toMatchObject({ learnedFrom: 59, unlearned: 0 });
    expect(after).toMatchObject({
      stale: false,
      learnedFrom: 59,
      unlearned: 1,
      learnedAt: before?.learnedAt,
    });
    expect(after?.learned).toEqual(before?.learned);
    expect(await roundVerdicts(store.shop, { job: 'J000029' })).toHaveLength(2);
    expect(await counted()).toEqual(
      readingsBefore?.map((count, hand) => count + (hand === 2 ? last.length : 0)),
    );
  });

  it('followJob judges the rounds of one job by what was learned before, and leaves the other figures to be worked out', async () => {
    await saveReadings(store.shop, last, fileNamed('last.csv'), BY_COMMAND);
    await followJob(store.shop, 'J000029', 'another program');
    expect(await roundVerdicts(store.shop, { job: 'J000029' })).toHaveLength(1);
    await followJob(store.shop, 'J000029', 'this program');
    const learned = (await currentLearned(store.shop))?.learned;
    const [judged] = await roundVerdicts(store.shop, { job: 'J000029' });
    const job = collapse(many).find((one) => one.job === 'J000029');
    const expected = learned && job?.rounds[1] && assessRound(job.rounds[1], learned);
    expect(judged).toEqual({ ...expected, at: judged?.at });
    expect(await jobsWithoutOutcome(store.shop)).toEqual([]);
    expect(await roundsWithoutProof(store.shop, 1)).toEqual([]);
    expect(await currentLearned(store.shop)).toMatchObject({ stale: true, unlearned: 1 });
    await refresh(store.shop, 'this program');
    expect(await currentLearned(store.shop)).toMatchObject({ stale: false, learnedFrom: 59, unlearned: 1 });
  });

  it('followJob does not hide from learning that somebody new has measured', async () => {
    const bySomebodyNew = last.map((reading) => ({ ...reading, technician: 'NEW' }));
    await saveReadings(store.shop, bySomebodyNew, fileNamed('last.csv'), BY_COMMAND);
    await followJob(store.shop, 'J000029', 'this program');
    expect(await roundVerdicts(store.shop, { job: 'J000029' })).toHaveLength(2);
    await refresh(store.shop, 'this program');
    expect((await currentLearned(store.shop))?.learned.technicians).toHaveProperty('NEW');
  });
});

describe('refreshSoon', () => {
  const store = freshStore({ filled: saveSix });

  const done = async (): Promise<number> => {
    const { text } = await metricsText(NO_SHOP);
    return Number(/refresh_duration_seconds_count\{outcome="done"\} (\d+)/.exec(text)?.[1] ?? 0);
  };

  it('brings figures up to date behind the caller, once more for all who asked meanwhile', async () => {
    expect(await currentLearned(store.shop)).toBeNull();
    const before = await done();
    refreshSoon(store.shop);
    refreshSoon(store.shop);
    refreshSoon(store.shop);
    while ((await done()) < before + 2) await pause(50);
    expect(await roundVerdicts(store.shop, {})).toHaveLength(12);
    expect((await currentLearned(store.shop))?.stale).toBe(false);
    expect(await done()).toBe(before + 2);
  });
});
