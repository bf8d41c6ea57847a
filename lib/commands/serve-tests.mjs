/** Serves the demo shop from a fresh database and a build of its own: what the browser tests run against. */
import { rmSync } from 'node:fs';
import { build } from './build.mjs';
import { TEST_BUILD } from './checks.mjs';
import { generate } from './generate.mjs';
import { node, stopChildrenWithUs } from './run.mjs';
import { answers, portFrom, serve } from './serve.mjs';

stopChildrenWithUs();
const port = portFrom(process.env.PORT);
const database = process.env.DATABASE_URL ?? '';
if (!database.startsWith('file:'))
  throw new Error('The browser tests need a DATABASE_URL that names a file.');
if (await answers(port))
  throw new Error(`Port ${port} is taken; name another: REHANG_TEST_PORT=3118 npm test`);
const remove = () => {
  for (const end of ['', '-wal', '-shm']) rmSync(database.slice('file:'.length) + end, { force: true });
};
remove();
await generate();
const prepared = await node(['--import', 'tsx', 'lib/commands/prepare.ts']);
if (prepared.code === 0) {
  await build(TEST_BUILD);
  process.exitCode = await serve(TEST_BUILD, port);
} else {
  process.exitCode = 1;
}
remove();
