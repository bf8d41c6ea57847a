import { spawn } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';

export interface Served {
  address: string;
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
    if (await answers(address + asked)) return { address, stop };
    await wait(250);
  }
  await stop();
  throw new Error(`The server on port ${port} did not answer within a minute.`);
}

const answers = (url: string): Promise<boolean> =>
  fetch(url).then(
    ({ ok }) => ok,
    () => false,
  );
