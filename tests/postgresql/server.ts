import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, chownSync, cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';

/** Nothing of a test has to outlive the machine, so the server need not wait for the disk. */
const SETTINGS = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'max_connections=200'];
const START_MS = 60_000;

export interface Server {
  /** Address of the server without a database's name. */
  address: string;
  stop: () => Promise<void>;
}

/** Starts a PostgreSQL server of its own in a temporary folder. */
export async function startServer(found: string): Promise<Server> {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-postgresql-'));
  const as = otherUser();
  if (as !== null) chownSync(folder, as.uid, as.gid);
  chmodSync(folder, 0o755);
  const programs = reachable(found, folder, as);
  const data = join(folder, 'data');
  const options = { ...as, cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] as ['ignore', 'ignore', 'pipe'] };
  const init = ['-D', data, '-U', 'rehang', '-A', 'trust', '-E', 'UTF8', '--no-sync', '--no-locale'];
  execFileSync(join(programs, 'initdb'), init, options);
  const port = await freePort();
  const settings = SETTINGS.flatMap((setting) => ['-c', setting]);
  const where = ['-D', data, '-p', String(port), '-k', folder, '-h', '127.0.0.1'];
  const server = spawn(join(programs, 'postgres'), [...where, ...settings], options);
  const said: string[] = [];
  server.stderr.on('data', (piece: Buffer) => said.push(piece.toString()));
  const address = `postgresql://rehang@127.0.0.1:${port}`;
  await untilReady(server, address, said);
  return {
    address,
    async stop() {
      const ended = once(server, 'exit');
      server.kill('SIGINT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function untilReady(server: ChildProcess, address: string, said: readonly string[]): Promise<void> {
  const until = Date.now() + START_MS;
  for (;;) {
    if (server.exitCode !== null || Date.now() > until)
      throw new Error(`The PostgreSQL server did not start:\n${said.join('')}`);
    const client = new pg.Client(`${address}/postgres`);
    try {
      await client.connect();
      await client.end();
      return;
    } catch {
      await pause(50);
    }
  }
}

/** Another user may not be let into the folder of the project: then the programs are copied out of it. */
function reachable(programs: string, folder: string, as: { uid: number; gid: number } | null): string {
  try {
    execFileSync(join(programs, 'postgres'), ['--version'], { ...as, cwd: folder, stdio: 'ignore' });
    return programs;
  } catch {
    cpSync(dirname(programs), join(folder, 'programs'), { recursive: true, verbatimSymlinks: true });
    return join(folder, 'programs', basename(programs));
  }
}

/** PostgreSQL refuses to run as root: then it runs as its own user, or as nobody. */
function otherUser(): { uid: number; gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const users = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .map((line) => line.split(':'));
  const found = users.find(([name]) => name === 'postgres') ?? users.find(([name]) => name === 'nobody');
  if (found === undefined) throw new Error('There is no user but root to run PostgreSQL as.');
  return { uid: Number(found[2]), gid: Number(found[3]) };
}

async function freePort(): Promise<number> {
  const server = createServer();
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  return typeof address === 'object' && address !== null ? address.port : 0;
}
