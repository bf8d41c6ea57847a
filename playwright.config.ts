import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig, devices } from '@playwright/test';
import { SIGNED_IN } from './e2e/signed-in';
import { databaseOf, LANES, ownLane, portOf } from './lib/commands/lanes.mjs';

// Read again by each worker, which then knows the server and the database of its own lane alone.
const port = portOf(Number(process.env.REHANG_TEST_PORT ?? '3117'), ownLane());
const database = databaseOf(
  process.env.REHANG_TEST_DATABASE ?? join(tmpdir(), `rehang-browser-${port - ownLane()}.db`),
  ownLane(),
);
const browser = process.env.REHANG_BROWSER;

/**
 * These load or change readings, and figures are worked out anew behind them: they come last, so that the others
 * find the demo shop as it was invented, and a processor that has nothing else to do.
 */
const CHANGES = ['bay', 'download', 'evidence', 'loading', 'sheets', 'trace'].map((one) => `${one}.spec.ts`);

/** Of those that only look the longest: they begin first, so that neither lane waits for the other at the end. */
const LONG = ['stopping', 'who-may', 'record', 'trials'].map((one) => `${one}.spec.ts`);

/** The manager, unless a test says otherwise. */
const asManager = { ...devices['Desktop Chrome'], storageState: SIGNED_IN.manager };

/** Browser tests run against a server, a build and a database of their own, beside a running shop. */
export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results',
  fullyParallel: false,
  workers: LANES,
  forbidOnly: process.env.CI !== undefined,
  retries: 0,
  timeout: 120_000,
  // Two lanes and the figures behind them share two cores.
  expect: { timeout: 15_000 },
  reporter: [
    ['list'],
    ['json', { outputFile: process.env.REHANG_TEST_REPORT ?? 'test-results/browser.json' }],
  ],
  use: {
    baseURL: `http://localhost:${port}`,
    locale: 'en-GB',
    timezoneId: 'UTC',
    // Every step would be drawn and packed, also of tests that pass: by hand, `--trace=on` for one that failed.
    trace: 'off',
    launchOptions: {
      ...(browser !== undefined && browser !== '' && { executablePath: browser }),
      args: [
        '--no-sandbox',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--disable-quic',
        '--no-first-run',
        '--disable-gpu',
        '--disable-dev-shm-usage',
      ],
    },
  },
  projects: [
    { name: 'sign in', testMatch: 'sign-in.setup.ts' },
    { name: 'long looks', testMatch: LONG, use: asManager, dependencies: ['sign in'] },
    { name: 'looks', testIgnore: [...CHANGES, ...LONG], use: asManager, dependencies: ['sign in'] },
    { name: 'changes', testMatch: CHANGES, use: asManager, dependencies: ['long looks', 'looks'] },
  ],
  webServer: {
    command: 'node lib/commands/serve-tests.mjs',
    url: `http://localhost:${port}/health`,
    timeout: 600_000,
    reuseExistingServer: false,
    stdout: 'pipe',
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5_000 },
    env: {
      PORT: String(port),
      REHANG_SECRET: 'of the browser tests, and of nothing else',
      DATABASE_URL: `file:${database}`,
    },
  },
});
