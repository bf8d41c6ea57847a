import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join, dirname } from 'node:path';
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg';

let started: Promise<void> | null = null;

async function start(): Promise<void> {
  const entry = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const bytes = await readFile(join(dirname(entry), 'schema_engine_bg.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': imports() });
  engine.__wbg_set_wasm(instance.exports);
  const begin = instance.exports.__wbindgen_start;
  if (typeof begin === 'function') (begin as () => void)();
}

/**
 * What the engine asks of JavaScript. It sets itself a time for the lock of a PostgreSQL server, ten seconds, and
 * forgets to clear it once it has the lock: that would keep each program alive for so long that migrates one.
 */
function imports(): Record<string, WebAssembly.ImportValue> {
  const unheld = (done: () => void, ms: number) => setTimeout(done, ms).unref();
  return Object.fromEntries(
    Object.entries(engine).map(([name, value]) => [
      name,
      name.startsWith('__wbg_setTimeout_') ? unheld : value,
    ]),
  );
}

/** Prisma's schema engine as WebAssembly: nothing to download, the standard table of migrations. */
export async function schemaEngine(
  adapters: SqlMigrationAwareDriverAdapterFactory,
  schema: string,
): Promise<engine.SchemaEngine> {
  started ??= start();
  await started;
  const log = () => undefined;
  return engine.SchemaEngine.new(
    { datamodels: [['schema.prisma', schema]] },
    log,
    bindMigrationAwareSqlAdapterFactory(adapters),
  );
}
