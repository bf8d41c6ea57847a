/** Installs the packages of the lockfile, unless that was done for this lockfile and this Node. */
import { join } from 'node:path';
import { root, run } from './run.mjs';
import { hashOf, isStamped, setStamp } from './stamp.mjs';

const stampFile = join(root, 'node_modules/.rehang-installed');

/** @returns {Promise<boolean>} false where nothing had to be done */
export async function install() {
  const stamp = `${hashOf(root, ['package-lock.json'])} ${process.version} ${process.platform} ${process.arch}`;
  if (isStamped(stampFile, stamp)) return false;
  console.log('Installing packages (a minute or so, once) …');
  const npm = process.env.npm_execpath;
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'];
  const { code } =
    npm === undefined
      ? await run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args)
      : await run(process.execPath, [npm, ...args]);
  if (code !== 0) {
    throw new Error('The packages could not be installed; npm says why above. Is the network reachable?');
  }
  setStamp(stampFile, stamp);
  return true;
}
