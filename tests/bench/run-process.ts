import { spawn } from 'node:child_process';

/** What a command wrote, or null where it is not installed or failed. */
export function runProcess(command: string, args: readonly string[]): Promise<string | null> {
  return new Promise((resolve) => {
    const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'ignore'] });
    let written = '';
    child.stdout.on('data', (chunk: Buffer) => (written += chunk.toString()));
    child.on('error', () => resolve(null));
    child.on('close', (code) => resolve(code === 0 ? written : null));
  });
}

/** The last line of what a command wrote, as JSON. */
export async function measure(command: string, args: readonly string[]): Promise<unknown> {
  const written = await runProcess(command, args);
  const last = written?.trim().split('\n').at(-1);
  return last === undefined ? null : (JSON.parse(last) as unknown);
}

/** A TypeScript file of ours in a process of its own. */
export const measureOurs = (file: URL, args: readonly string[]): Promise<unknown> =>
  measure(process.execPath, ['--import', 'tsx', file.pathname, ...args]);
