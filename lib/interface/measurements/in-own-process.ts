import { spawn } from 'node:child_process';
import { keepTrack } from '@/lib/observe';
import { takeFile, takenFile, type Arrived, type TakenFile } from './take-file';

/** Larger files are read in a process of their own, so that no page waits for them, bytes. */
const LARGE = 1_000_000;

export const takeApart = (file: Arrived): Promise<TakenFile> =>
  file.bytes > LARGE ? inOwnProcess(file) : takeFile(file);

/** The same; awaited where the program is stopped meanwhile. */
function inOwnProcess(file: Arrived): Promise<TakenFile> {
  const child = spawn(process.execPath, ['lib/commands/begin.mjs', 'lib/commands/take-file.ts'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  keepTrack(child, 'awaited');
  const said: Buffer[] = [];
  child.stdout.on('data', (piece: Buffer) => said.push(piece));
  child.stdin.end(JSON.stringify(file));
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => {
      if (code !== 0) return reject(new Error(`its process ended with ${code ?? 'a signal'}`));
      resolve(takenFile.parse(JSON.parse(Buffer.concat(said).toString('utf8'))));
    });
  });
}
