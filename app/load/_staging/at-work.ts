import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { keepTrack, note } from '@/lib/observe';
import { doTask, type Task } from './task';
import { keepMark, readMark, setMark } from './work-marks';

/** Larger files are worked on in a process of their own: reading them takes longer than a page may wait, bytes. */
export const LARGE = 1_000_000;

/** What is being done with a staged file right now, and the share of it that is read. */
export interface AtWork {
  task: Task;
  share: number;
}

// One a server, also where it loads this module more than once.
const held = globalThis as typeof globalThis & {
  rehangFilesAtWork?: Map<string, AtWork>;
  rehangFilesFailed?: Set<string>;
};
const atWork = () => (held.rehangFilesAtWork ??= new Map<string, AtWork>());
const failed = () => (held.rehangFilesFailed ??= new Set<string>());

/** What is being done with this file, by this process or another; null where nothing is. */
export const workOn = async (id: string): Promise<AtWork | null> => atWork().get(id) ?? (await readMark(id));

/** Whether the last task with this file broke off. */
export const hasFailed = (id: string): boolean => failed().has(id);

/**
 * Checks or stores a staged file. A small one is done when this returns; a large one is worked on behind the pages,
 * so that no other page waits for it. Nothing is begun while the file is at work already.
 * @param then Called once it was done.
 */
export async function begin(
  task: Task,
  id: string,
  bytes: number,
  then?: () => Promise<void>,
): Promise<void> {
  if (atWork().has(id)) return;
  const work: AtWork = { task, share: 0 };
  atWork().set(id, work);
  if (!(await setMark(id, work))) {
    atWork().delete(id);
    return;
  }
  failed().delete(id);
  const takeMark = keepMark(id, work);
  const done = (bytes > LARGE ? apart(id, work) : doTask(task, id, () => undefined))
    .then(then)
    .catch((error: unknown) => {
      note.fileFailed({ task }, error);
      failed().add(id);
    })
    .finally(async () => {
      await takeMark();
      atWork().delete(id);
    });
  if (bytes <= LARGE) await done;
}

/** A process that reads and writes in pieces needs little room: without these its heap grows as if there were plenty. */
const LEAN = ['--liftoff-only', '--max-semi-space-size=2', '--heap-growing-percent=15'];

/** The same task in a process of its own, which ends with this one. */
function apart(id: string, work: AtWork): Promise<void> {
  const child = spawn(
    process.execPath,
    [...LEAN, 'lib/commands/begin.mjs', 'app/load/_staging/task-program.ts', work.task, id],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  keepTrack(child, work.task === 'store' ? 'awaited' : 'told');
  const stop = () => child.kill();
  process.once('exit', stop);
  createInterface({ input: child.stdout }).on('line', (line) => {
    const share = Number(line);
    if (share >= 0 && share <= 1) work.share = share;
  });
  return new Promise<void>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`its process ended with ${code ?? 'a signal'}`));
    });
  }).finally(() => process.off('exit', stop));
}
