/** Finds a Chromium for the browser tests, or installs one. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { node, root, run } from './run.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

/** @returns {string | null} */
function onPath() {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    for (const name of NAMES) if (folder !== '' && existsSync(join(folder, name))) return join(folder, name);
  }
  return null;
}

async function playwrights() {
  const { chromium } = await import('@playwright/test');
  const path = chromium.executablePath();
  return path !== '' && existsSync(path) ? path : null;
}

async function installedByPlaywright() {
  console.log('Installing a browser for the tests …');
  const { code } = await node(
    [join(root, 'node_modules/playwright/cli.js'), 'install', 'chromium'],
    {},
    'pipe',
  );
  return code === 0 ? playwrights() : null;
}

async function installedBySystem() {
  if (process.getuid?.() !== 0) return null;
  const apt = { DEBIAN_FRONTEND: 'noninteractive' };
  const updated = await run('apt-get', ['update', '-qq'], apt, 'pipe').catch(() => ({ code: 1 }));
  if (updated.code !== 0) return null;
  const { code } = await run('apt-get', ['install', '-y', '-qq', 'chromium'], apt, 'pipe');
  return code === 0 ? onPath() : null;
}

/**
 * By the environment variable REHANG_BROWSER, Playwright's own, the system's, or one installed now.
 * @returns {Promise<string>} path of its program
 */
export async function findBrowser() {
  const named = process.env.REHANG_BROWSER;
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return named;
    throw new Error(`REHANG_BROWSER names ${named}, but there is no such file.`);
  }
  const found =
    (await playwrights()) ?? onPath() ?? (await installedByPlaywright()) ?? (await installedBySystem());
  if (found !== null) return found;
  throw new Error(
    'No browser was found or could be installed. Install Chromium, or name one: REHANG_BROWSER=/path/to/chromium npm test',
  );
}
