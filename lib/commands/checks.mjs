/** The checks of `npm test`, each with how many passed and failed. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { audit } from './audit.mjs';
import { findBrowser } from './browser.mjs';
import { build } from './build.mjs';
import { generate } from './generate.mjs';
import { LANES } from './lanes.mjs';
import { quickFolder } from './quick-folder.mjs';
import { bundle, OF_A_SERVER } from './programs.mjs';
import { node } from './run.mjs';
import { freePorts } from './serve.mjs';

/**
 * @typedef {{ passed: number, failed: number, said?: string }} Counts `said` where nothing was counted
 * @typedef {{ name: string, run: () => Promise<Counts> }} Check
 */

const bin = {
  prettier: 'node_modules/prettier/bin/prettier.cjs',
  next: 'node_modules/next/dist/bin/next',
  vitest: 'node_modules/vitest/vitest.mjs',
  playwright: 'node_modules/@playwright/test/cli.js',
};

/** Where the pages for the browser tests are built. */
export const TEST_BUILD = '.next-test';

/** Exit codes of types-and-lint.mjs; a program that breaks off (1) has shown neither. */
const TYPES_WRONG = [1, 2, 6];
const LINT_WRONG = [1, 4, 6];

/** Colours are for people: a log gets none. */
const plain = process.stdout.isTTY ? {} : { NO_COLOR: '1' };

/**
 * Runs beside other checks: what it says is told whole, once it is done.
 * @param {readonly string[][]} commands that must all succeed, in order
 * @returns {Promise<Counts>}
 */
async function one(...commands) {
  for (const command of commands) {
    const { code, output } = await node(command, plain, 'pipe');
    process.stdout.write(output);
    if (code !== 0) return { passed: 0, failed: 1 };
  }
  return { passed: 1, failed: 0 };
}

const READY = { passed: 0, failed: 0 };

async function clients() {
  await generate();
  await bundle(OF_A_SERVER).catch(() => undefined);
  return READY;
}

/** Two checks of one process. */
async function typesAndLint() {
  const typed = await node([bin.next, 'typegen'], plain, 'pipe');
  const { code, output } = await node(['lib/commands/types-and-lint.mjs'], plain, 'pipe');
  process.stdout.write(typed.code === 0 ? output : typed.output + output);
  const failed = [typed.code !== 0 || TYPES_WRONG.includes(code), LINT_WRONG.includes(code)];
  const count = failed.filter(Boolean).length;
  return { passed: 2 - count, failed: count };
}

/**
 * A run that says fewer failures than its exit code does (a file that cannot be loaded, say) counts one more.
 * @param {number} code
 * @param {Counts} counts
 */
const honest = (code, { passed, failed }) => ({ passed, failed: code !== 0 && failed === 0 ? 1 : failed });

/**
 * @template Result
 * @param {(folder: string) => Promise<Result>} work
 */
async function inTemporaryFolder(work) {
  const folder = mkdtempSync(join(quickFolder(), 'rehang-test-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @param {string} file */
function report(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

function unit() {
  return inTemporaryFolder(async (folder) => {
    const file = join(folder, 'vitest.json');
    const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
    const { code } = await node([bin.vitest, ...args], { TZ: 'UTC', ...plain });
    const found = report(file);
    if (found === null) return { passed: 0, failed: 1 };
    return honest(code, { passed: found.numPassedTests, failed: found.numFailedTests });
  });
}

function browser() {
  return inTemporaryFolder(async (folder) => {
    const file = join(folder, 'browser.json');
    const { code } = await node([bin.playwright, 'test'], {
      REHANG_BROWSER: await findBrowser(),
      REHANG_TEST_PORT: String(await freePorts(LANES)),
      REHANG_TEST_DATABASE: join(folder, 'browser.db'),
      REHANG_TEST_REPORT: file,
      ...(isLearned() && { REHANG_TEST_DEMO: demoFile() }),
      ...plain,
    });
    if (demoFolder !== '') rmSync(demoFolder, { recursive: true, force: true });
    const stats = report(file)?.stats;
    if (stats === undefined) return { passed: 0, failed: 1 };
    return honest(code, { passed: stats.expected + stats.flaky, failed: stats.unexpected });
  });
}

/** The browser tests find it done. */
async function pages() {
  await build(TEST_BUILD, 'pipe');
  return READY;
}

/** Where the demo shop is as it was learned, once it is; made while both cores have something to do. */
let demoFolder = '';
const demoFile = () => join(demoFolder, 'demo.db');
const isLearned = () => demoFolder !== '' && existsSync(demoFile());

async function demo() {
  demoFolder = mkdtempSync(join(quickFolder(), 'rehang-demo-'));
  const { code, output } = await node(
    ['lib/commands/begin.mjs', 'lib/commands/prepare.ts'],
    { DATABASE_URL: `file:${demoFile()}` },
    'pipe',
  );
  if (code !== 0) process.stdout.write(output);
  return { passed: 0, failed: code === 0 ? 0 : 1 };
}

/**
 * In steps; the lanes of a step run side by side, since hardly any check keeps two cores busy.
 * @param {boolean} quick leaves the browser out
 * @param {() => Promise<boolean>} finishPackages the second step of installing them
 * @returns {Check[][][]} steps of lanes of checks
 */
export function checks(quick, finishPackages) {
  /** @type {Promise<boolean> | undefined} */
  let finished;
  const packages = async () => {
    await (finished ??= finishPackages());
    return READY;
  };
  const looks = [
    { name: 'format', run: () => one([bin.prettier, '--check', '--log-level=warn', '.']) },
    { name: 'types, lint and layering', run: typesAndLint },
  ];
  const forTheBrowser = [
    { name: 'pages', run: pages },
    { name: 'demo shop', run: () => packages().then(demo) },
  ];
  return [
    [[{ name: 'database clients and programs', run: clients }]],
    [
      [...looks, ...(quick ? [] : forTheBrowser)],
      [
        { name: 'packages of this machine', run: packages },
        { name: 'unit, reference and property tests', run: unit },
      ],
      // It waits for the registry.
      [{ name: 'dependency audit', run: audit }],
    ],
    ...(quick ? [] : [[[{ name: 'browser tests', run: browser }]]]),
  ];
}
