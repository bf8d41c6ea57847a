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
  'tests/unit/refresh/refresh.test.ts',
];
/** Plain calculations: nothing of one file can reach another, so they share what they import. */
const PURE = [
  'tests/reference/**/*.test.ts',
  'tests/property/{stats,assess,assess-calibration,assess-evidence,measure}/**/*.test.ts',
  'tests/unit/{stats,assess,assess-*,measure}/**/*.test.ts',
];
const ON_POSTGRESQL = 'tests/unit/store/postgresql/*.test.ts';

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)).replace(/\/$/, '') } },
  test: {
    env: { TZ: 'UTC', TMPDIR: quickFolder() },
    // As many as there are cores: by its own measure it would leave one of two idle.
    maxWorkers: availableParallelism(),
    testTimeout: 60_000,
    hookTimeout: 60_000,
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      {
        extends: true,
        test: {
          name: 'sqlite',
          include: ['tests/**/*.test.ts'],
          exclude: [...PURE, ON_POSTGRESQL],
          globalSetup: 'tests/sqlite/global-setup.ts',
        },
      },
      {
        extends: true,
        test: {
          name: 'postgresql',
          include: [...ON_BOTH, ON_POSTGRESQL],
          globalSetup: 'tests/postgresql/global-setup.ts',
          env: { REHANG_TEST_ENGINE: 'postgresql' },
        },
      },
    ],
  },
});
