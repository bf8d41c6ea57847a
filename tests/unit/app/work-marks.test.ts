import { mkdtempSync, rmSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { keepMark, readMark, setMark } from '@/app/load/_staging/work-marks';

const folder = mkdtempSync(join(tmpdir(), 'rehang-marks-'));
vi.stubEnv('REHANG_STAGING_DIR', folder);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('a file that one process is at work on is left alone by all others until it is done', async () => {
  const both = await Promise.all([1, 2].map(() => setMark('one', { task: 'check', share: 0 })));
  expect(both.filter(Boolean)).toHaveLength(1);
  const done = keepMark('one', { task: 'check', share: 0.5 });
  expect(await readMark('one')).toMatchObject({ task: 'check' });
  expect(await setMark('one', { task: 'store', share: 0 })).toBe(false);
  await done();
  expect(await readMark('one')).toBeNull();
  expect(await setMark('one', { task: 'store', share: 0 })).toBe(true);
});

it('what a process left that is gone holds nobody up', async () => {
  expect(await setMark('two', { task: 'store', share: 0 })).toBe(true);
  const past = Date.now() / 1000 - 60;
  utimesSync(join(folder, 'two.work'), past, past);
  expect(await readMark('two')).toBeNull();
  expect(await setMark('two', { task: 'store', share: 0 })).toBe(true);
});
