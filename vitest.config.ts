import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { quickFolder } from './lib/commands/quick-folder.mjs';

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)).replace(/\/$/, '') } },
  test: {
    include: ['tests/**/*.test.ts'],
    env: { TZ: 'UTC', TMPDIR: quickFolder() },
    testTimeout: 60_000,
  },
});
