/** Installs the packages of the lockfile, unless that was done for this lockfile and this Node. */
import { join } from 'node:path';
import { root, run } from './run.mjs';
import { hashOf, isStamped, setStamp } from './stamp.mjs';

const stampFile = join(root, 'node_modules/.rehang-installed');

/**
 * Runs npm: the one that started us, else the one of the path.
 * @param {readonly string[]} args
 * @param {'inherit' | 'pipe'} output
 */
export function npm(args, output) {
  const path = process.env.npm_execpath;
  return path === undefined
    ? run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, {}, output)
    : run(process.execPath, [path, ...args], {}, output);
}

/** @returns {Promise<boolean>} false where nothing had to be done */
export async function install() {
  const stamp = `${hashOf(root, ['package-lock.json'])} ${process.version} ${process.platform} ${process.arch}`;
  if (isStamped(stampFile, stamp)) return false;
  console.log('Installing packages (a minute or so, once) …');
  const { code } = await npm(
    ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'],
    'inherit',
  );
  if (code !== 0) {
    throw new Error('The packages could not be installed; npm says why above. Is the network reachable?');
  }
  setStamp(stampFile, stamp);
  return true;
}
