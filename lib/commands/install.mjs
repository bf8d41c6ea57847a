/** Installs the packages of the lockfile, unless that was done for this lockfile and this Node. */
import { readFileSync } from 'node:fs';
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

const stamp = () =>
  `${hashOf(root, ['package-lock.json'])} ${process.version} ${process.platform} ${process.arch}`;

/** @param {readonly string[]} further options of npm */
async function fetchPackages(...further) {
  console.log('Installing packages (a minute or so, once) …');
  const { code } = await npm(
    ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error', ...further],
    'inherit',
  );
  if (code !== 0) {
    throw new Error('The packages could not be installed; npm says why above. Is the network reachable?');
  }
}

/** @returns {Promise<boolean>} false where nothing had to be done */
export async function install() {
  if (isStamped(stampFile, stamp())) return false;
  await fetchPackages();
  setStamp(stampFile, stamp());
  return true;
}

/**
 * The same in two steps: what some packages make on this machine (the database in C takes one core a minute and a
 * half, where no ready one can be had) goes on beside what needs nothing of it.
 * @returns {Promise<() => Promise<boolean>>} the second step; it resolves to false where nothing had to be done
 */
export async function installInSteps() {
  if (isStamped(stampFile, stamp())) return () => Promise.resolve(false);
  await fetchPackages('--ignore-scripts');
  return async () => {
    const { code, output } = await npm(['rebuild', '--loglevel=error', ...withScripts()], 'pipe');
    if (code !== 0) {
      process.stdout.write(output);
      throw new Error('Packages could not be built on this machine; npm says why above.');
    }
    setStamp(stampFile, stamp());
    return true;
  };
}

/** Packages whose scripts are let run. Those of other machines are not installed, and npm passes over them. */
function withScripts() {
  /** @type {{ allowScripts: Record<string, boolean> }} */
  const { allowScripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return Object.keys(allowScripts).filter((name) => allowScripts[name]);
}
