/** Where tests keep their databases. */
import { accessSync, constants, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';

const IN_MEMORY = '/dev/shm';
const ROOM = 2 ** 30;

/**
 * The store waits for the disk at every commit, which a test has no use for: where there is a folder in memory
 * with room enough, tests use that one.
 * @returns {string}
 */
export function quickFolder() {
  try {
    accessSync(IN_MEMORY, constants.W_OK);
    const { bavail, bsize } = statfsSync(IN_MEMORY);
    return bavail * bsize >= ROOM ? IN_MEMORY : tmpdir();
  } catch {
    return tmpdir();
  }
}
