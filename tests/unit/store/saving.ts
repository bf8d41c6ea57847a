import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';

export interface Saving {
  child: ChildProcess;
  /** What it has acknowledged so far. */
  said: () => string[];
  /** The exit code, or null where it was killed. */
  ended: Promise<number | null>;
}

/** Starts `saving-process.ts` on a database. */
export function saving(url: string, ...args: string[]): Saving {
  const child = spawn(
    process.execPath,
    ['lib/commands/begin.mjs', 'tests/unit/store/saving-process.ts', ...args],
    {
      env: { ...process.env, DATABASE_URL: url },
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  let text = '';
  child.stdout.on('data', (piece: Buffer) => (text += piece.toString()));
  return {
    child,
    said: () => text.split('\n').filter((line) => line !== ''),
    ended: once(child, 'exit').then(([code]) => code as number | null),
  };
}

export async function until(condition: () => boolean): Promise<void> {
  while (!condition()) await pause(5);
}
