import type { ChildProcess } from 'node:child_process';

/** How long work that was begun may go on once the program is told to stop, ms. */
const AWAITED = 20_000;

/**
 * What becomes of a process of ours when the program stops: one that stores what somebody sent is awaited, one that
 * can be done again any time is told to stop. Either way its transaction is whole or absent.
 */
type AtStop = 'awaited' | 'told';

const held = globalThis as typeof globalThis & {
  rehangRunning?: Map<ChildProcess, AtStop>;
  rehangStopping?: boolean;
};
const running = () => (held.rehangRunning ??= new Map<ChildProcess, AtStop>());

/** Keeps track of a process until it ends. */
export function keepTrack(child: ChildProcess, atStop: AtStop): void {
  running().set(child, atStop);
  const ended = () => running().delete(child);
  child.once('exit', ended);
  child.once('error', ended);
}

/** True once the program was told to stop; nothing new is to be begun then. */
export const isStopping = (): boolean => held.rehangStopping === true;

/**
 * Ends the processes that this one began, each in its way.
 * @returns how many had to be ended although they were awaited.
 */
export async function stopRunning(awaited = AWAITED): Promise<number> {
  held.rehangStopping = true;
  for (const [child, atStop] of running()) if (atStop === 'told') child.kill('SIGTERM');
  const until = Date.now() + awaited;
  while (running().size > 0 && Date.now() < until) await new Promise((resolve) => setTimeout(resolve, 25));
  const left = [...running().keys()];
  for (const child of left) child.kill('SIGKILL');
  return left.length;
}
