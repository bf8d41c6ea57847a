import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  currentFit,
  getShop,
  listLoadedFiles,
  listRecheckOutcomes,
  loadJobs,
  missCosts,
  recordOutcome,
  saveFit,
  saveReadings,
  setMissCost,
} from '@/lib/store';
import { collapse } from '@/lib/measure';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const store = freshStore();
afterEach(() => vi.useRealTimers());

const clockAt = (time: number) => vi.useFakeTimers({ toFake: ['Date'], now: time });

describe('a clock that is set back', () => {
  it('does not change which of two entries is the later one', async () => {
    const tell = async (mark: number) => {
      await saveReadings(store.shop, regularShop(mark), fileNamed(`file ${mark}`), BY_COMMAND);
      await saveFit(store.shop, { inputsVersion: mark, parameters: mark, figures: mark });
      await setMissCost(store.shop, { cost: 10 + mark }, BY_COMMAND);
      const cause = mark === 1 ? 'gauge' : 'body';
      await recordOutcome(
        store.shop,
        {
          job: 'J000000',
          setup: 'before-0',
          side: 'L',
          cause,
          note: null,
        },
        BY_COMMAND,
      );
    };
    clockAt(Date.UTC(2026, 5, 1));
    await tell(1);
    clockAt(Date.UTC(2020, 0, 1));
    await tell(2);
    expect((await listLoadedFiles(store.shop)).map(({ name }) => name)).toEqual(['file 2', 'file 1']);
    expect((await currentFit(store.shop))?.parameters).toBe(2);
    expect((await missCosts(store.shop)).map(({ cost }) => cost)).toEqual([12, 11]);
    expect((await getShop()).missCost).toBe(12);
    expect((await listRecheckOutcomes(store.shop)).map(({ cause }) => cause)).toEqual(['body', 'gauge']);
    const [job] = await loadJobs(store.shop, { jobs: ['J000000'] });
    expect(job?.rounds[0]?.setups[0]?.observations[0]?.cause).toBe('body');
  });

  it('has no say in the order of readings: their own times decide', async () => {
    clockAt(Date.UTC(2001, 0, 1));
    await saveReadings(store.shop, regularShop(3), fileNamed('three.csv'), BY_COMMAND);
    expect(await loadJobs(store.shop)).toEqual(collapse(regularShop(3)));
  });
});
