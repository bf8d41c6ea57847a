import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { migrated } from '@/tests/migrated';

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of an empty SQLite database with all migrations, to be copied. */
    sqliteTemplate: string;
  }
}

/** One migrated database for all tests: each copies it. */
export default async function setup(project: TestProject) {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-template-'));
  const template = join(folder, 'template.db');
  await migrated(`file:${template}`);
  project.provide('sqliteTemplate', template);
  return () => rmSync(folder, { recursive: true, force: true });
}
