import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { migrated } from '@/tests/migrated';
import { sharedSetUp } from '@/tests/shared-set-up';

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of an empty SQLite database with all migrations, to be copied. */
    sqliteTemplate: string;
  }
}

async function makeTemplate() {
  const folder = mkdtempSync(join(tmpdir(), 'rehang-template-'));
  const template = join(folder, 'template.db');
  await migrated(`file:${template}`);
  return { value: template, end: () => rmSync(folder, { recursive: true, force: true }) };
}

/** One migrated database for all tests: each copies it. */
export default async function setup(project: TestProject) {
  const { value, letGo } = await sharedSetUp('SQLite template', makeTemplate);
  project.provide('sqliteTemplate', value);
  return letGo;
}
