import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, it } from 'vitest';
import { keepTrack, stopRunning } from '@/lib/observe';

/** Works until it is told to stop or is done; says how it ended. */
const working = (forMs: number) => spawn(process.execPath, ['-e', `setTimeout(() => {}, ${forMs})`]);

it('a stop tells one process to end, waits for another, and ends what takes longer than the bound', async () => {
  const [told, awaited, endless] = [working(60_000), working(300), working(60_000)];
  keepTrack(told, 'told');
  keepTrack(awaited, 'awaited');
  keepTrack(endless, 'awaited');
  const ends = Promise.all(
    [told, awaited, endless].map(
      (child) => once(child, 'exit') as Promise<[number | null, NodeJS.Signals | null]>,
    ),
  );
  expect(await stopRunning(4_000)).toBe(1);
  expect(await ends).toEqual([
    [null, 'SIGTERM'],
    [0, null],
    [null, 'SIGKILL'],
  ]);
});
