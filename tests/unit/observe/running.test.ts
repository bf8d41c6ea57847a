import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, it } from 'vitest';
import { keepTrack, stopRunning } from '@/lib/observe';

/** Works until it is told to stop or its input ends; resolves once it does. */
async function working() {
  const child = spawn(process.execPath, ['-e', 'process.stdin.resume(); console.log("ready")'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  await once(child.stdout, 'data');
  return child;
}

it('a stop tells one process to end, waits for another, and ends what takes longer than the bound', async () => {
  const [told, awaited, endless] = await Promise.all([working(), working(), working()]);
  keepTrack(told, 'told');
  keepTrack(awaited, 'awaited');
  keepTrack(endless, 'awaited');
  const ends = Promise.all(
    [told, awaited, endless].map(
      (child) => once(child, 'exit') as Promise<[number | null, NodeJS.Signals | null]>,
    ),
  );
  const stopped = stopRunning(1_500);
  awaited.stdin.end();
  expect(await stopped).toBe(1);
  expect(await ends).toEqual([
    [null, 'SIGTERM'],
    [0, null],
    [null, 'SIGKILL'],
  ]);
});
