import { spawn } from 'node:child_process';
import { z } from 'zod';

const Used = z.object({ kilobytes: z.number(), microseconds: z.number() });

export interface Timed {
  seconds: number;
  /** Greatest memory of the process, and seconds of processor that it used; null where it did not tell. */
  megabytes: number | null;
  work: number | null;
  code: number;
}

/** A program from its start to its end, what it writes thrown away. `ours`: one of our own, which tells what it used. */
export function timed(
  command: string,
  args: readonly string[],
  options: { input?: string; env?: Record<string, string> } = {},
): Promise<Timed> {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    const child = spawn(command, args, {
      stdio: ['pipe', 'ignore', 'inherit', 'pipe'],
      env: { ...process.env, ...options.env },
    });
    let told = '';
    child.stdio[3]?.on('data', (chunk: Buffer) => (told += chunk.toString()));
    child.once('error', reject);
    child.once('close', (code) => {
      const used = told === '' ? null : Used.parse(JSON.parse(told));
      resolve({
        seconds: (performance.now() - start) / 1000,
        megabytes: used && used.kilobytes / 1024,
        work: used && used.microseconds / 1e6,
        code: code ?? 1,
      });
    });
    child.stdin?.end(options.input ?? '');
  });
}

/** One of our TypeScript programs, as its npm script runs it. */
export const timedOurs = (
  file: string,
  args: readonly string[],
  env: Record<string, string> = {},
): Promise<Timed> =>
  timed(
    process.execPath,
    ['--import', new URL('use-at-exit.mjs', import.meta.url).href, 'lib/commands/begin.mjs', file, ...args],
    { env },
  );
