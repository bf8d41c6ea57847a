import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';

export interface Served {
  address: string;
  /** Of processor that the server has taken so far; NaN where the system does not tell. */
  seconds: () => number;
  stop: () => Promise<void>;
}

/** A Node program from its start to its end; what it writes is thrown away unless it fails. */
export function finished(args: readonly string[], env: Record<string, string>): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...env },
    });
    let [written, wrong] = ['', ''];
    child.stdout.on('data', (chunk: Buffer) => (written += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (wrong += chunk.toString()));
    child.once('error', reject);
    child.once('close', (code) => {
      if (code === 0) resolve(written);
      else reject(new Error(`${args.join(' ')} ended with ${code}:\n${written}${wrong}`));
    });
  });
}

/** A server, from when it answers. */
export async function serving(
  args: readonly string[],
  env: Record<string, string>,
  port: number,
  asked: string,
): Promise<Served> {
  const address = `http://localhost:${port}`;
  const child = spawn(process.execPath, args, { stdio: 'ignore', env: { ...process.env, ...env } });
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const stop = async () => {
    child.kill('SIGTERM');
    await ended;
  };
  for (let tries = 0; tries < 240; tries++) {
    if (child.exitCode !== null) throw new Error(`The server on port ${port} ended with ${child.exitCode}.`);
    if (await answers(address + asked)) return { address, seconds: () => processorSeconds(child.pid), stop };
    await wait(250);
  }
  await stop();
  throw new Error(`The server on port ${port} did not answer within a minute.`);
}

/** Ticks of a process in its own and the system's time, a hundredth of a second each: proc(5). */
function processorSeconds(pid: number | undefined): number {
  try {
    const [own, system] =
      readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ').slice(11, 13) ?? [];
    return (Number(own) + Number(system)) / 100;
  } catch {
    return Number.NaN;
  }
}

const answers = (url: string): Promise<boolean> =>
  fetch(url).then(
    ({ ok }) => ok,
    () => false,
  );
