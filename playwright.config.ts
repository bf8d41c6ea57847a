import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig, devices } from '@playwright/test';
import { SIGNED_IN } from './e2e/signed-in';

const port = Number(process.env.REHANG_TEST_PORT ?? '3117');
const browser = process.env.REHANG_BROWSER;

/** What the demo shop tells its three users: looked at before other tests load readings of their own. */
const STORIES = ['manager.spec.ts', 'technician.spec.ts', 'trainer.spec.ts'];

/** The manager, unless a test says otherwise. */
const asManager = { ...devices['Desktop Chrome'], storageState: SIGNED_IN.manager };

/** Browser tests run against a server, a build and a database of their own, beside a running shop. */
export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results',
  fullyParallel: false,
  workers: 1,
  forbidOnly: process.env.CI !== undefined,
  retries: 0,
  timeout: 120_000,
  reporter: [
    ['list'],
    ['json', { outputFile: process.env.REHANG_TEST_REPORT ?? 'test-results/browser.json' }],
  ],
  use: {
    baseURL: `http://localhost:${port}`,
    locale: 'en-GB',
    timezoneId: 'UTC',
    trace: 'retain-on-failure',
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
    { name: 'stories', testMatch: STORIES, use: asManager, dependencies: ['sign in'] },
    {
      name: 'chromium',
      testIgnore: STORIES,
      use: asManager,
      dependencies: ['stories'],
    },
  ],
  webServer: {
    command: 'node lib/commands/serve-tests.mjs',
    url: `http://localhost:${port}/health`,
    timeout: 300_000,
    reuseExistingServer: false,
    stdout: 'pipe',
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5_000 },
    env: {
      PORT: String(port),
      REHANG_SECRET: 'of the browser tests, and of nothing else',
      DATABASE_URL: `file:${process.env.REHANG_TEST_DATABASE ?? join(tmpdir(), `rehang-browser-${port}.db`)}`,
    },
  },
});
