import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { quickFolder } from './lib/commands/quick-folder.mjs';

/** Tests of what both databases must do alike. */
const ON_BOTH = [
  'tests/unit/store/*.test.ts',
  'tests/property/store/*.test.ts',
  'tests/unit/identity/*.test.ts',
  'tests/unit/interface/{endpoints,tokens}.test.ts',
  'tests/unit/schedule/report-clock.test.ts',
  'tests/unit/refresh/{refresh,update-shares}.test.ts',
];
/** Plain calculations, without a database. */
const PURE = [
  'tests/reference/**/*.test.ts',
  'tests/property/{stats,bay,assess,assess-calibration,assess-evidence,measure,seed}/**/*.test.ts',
  'tests/unit/{stats,assess,assess-*,measure,seed}/**/*.test.ts',
];
/** What these set up (a module's stand-in, the environment, globals) would reach the files that come after them. */
const ALONE_ON_BOTH = [
  'tests/unit/identity/signing-in.test.ts',
  'tests/unit/interface/endpoints.test.ts',
  'tests/unit/schedule/report-clock.test.ts',
];
const ALONE = [
  ...ALONE_ON_BOTH,
  'tests/unit/app/{bay-device,bay-endpoints,letter-and-talk,printed,record,speech,told,trace-words,work-marks}.test.ts',
  'tests/unit/observe/*.test.ts',
];
const ON_POSTGRESQL = 'tests/unit/store/postgresql/*.test.ts';

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)).replace(/\/$/, '') } },
  test: {
    env: { TZ: 'UTC', TMPDIR: quickFolder() },
    // As many as there are cores: by its own measure it would leave one of two idle.
    maxWorkers: availableParallelism(),
    // These end what hangs. On a busy machine a test takes ten times as long as it should, and still passes.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // Files share what they import, which takes longer than most tests, unless they are to stand alone.
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      {
        extends: true,
        test: {
          name: 'sqlite',
          include: ['tests/**/*.test.ts'],
          exclude: [...PURE, ...ALONE, ON_POSTGRESQL],
          globalSetup: 'tests/sqlite/global-setup.ts',
          isolate: false,
        },
      },
      {
        extends: true,
        test: { name: 'alone', include: ALONE, globalSetup: 'tests/sqlite/global-setup.ts' },
      },
      {
        extends: true,
        test: {
          name: 'postgresql',
          include: [...ON_BOTH, ON_POSTGRESQL],
          exclude: ALONE,
          globalSetup: 'tests/postgresql/global-setup.ts',
          env: { REHANG_TEST_ENGINE: 'postgresql' },
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'postgresql alone',
          include: ALONE_ON_BOTH,
          globalSetup: 'tests/postgresql/global-setup.ts',
          env: { REHANG_TEST_ENGINE: 'postgresql' },
        },
      },
    ],
  },
});
