/** Serves the demo shop from fresh databases and a build of its own: what the browser tests run against. */
import { copyFileSync, existsSync, rmSync } from 'node:fs';
import { build } from './build.mjs';
import { TEST_BUILD } from './checks.mjs';
import { generate } from './generate.mjs';
import { databaseOf, LANES, portOf } from './lanes.mjs';
import { node, stopChildrenWithUs } from './run.mjs';
import { answers, portFrom, serve, untilHealthy } from './serve.mjs';

stopChildrenWithUs();
const port = portFrom(process.env.PORT);
const url = process.env.DATABASE_URL ?? '';
if (!url.startsWith('file:')) throw new Error('The browser tests need a DATABASE_URL that names a file.');
const lanes = Array.from({ length: LANES }, (_, lane) => ({
  port: portOf(port, lane),
  database: databaseOf(url.slice('file:'.length), lane),
}));
for (const lane of lanes)
  if (await answers(lane.port))
    throw new Error(`Port ${lane.port} is taken; name another: REHANG_TEST_PORT=3118 npm test`);

const remove = () => {
  for (const { database } of lanes) {
    for (const end of ['', '-wal', '-shm']) rmSync(database + end, { force: true });
    rmSync(`${database}-staged`, { recursive: true, force: true });
  }
};

/** Loaded and learned once, by `npm test` before it comes here or else here: each lane begins with a copy. */
async function prepare() {
  await generate();
  const demo = process.env.REHANG_TEST_DEMO;
  if (demo !== undefined && demo !== '') {
    for (const { database } of lanes) copyFileSync(demo, database);
    return true;
  }
  const prepared = await node(['lib/commands/begin.mjs', 'lib/commands/prepare.ts']);
  if (prepared.code !== 0) return false;
  const [first, ...others] = lanes;
  const kept = first?.database ?? '';
  if (existsSync(`${kept}-wal`)) throw new Error(`${kept} was not closed: it cannot be copied.`);
  for (const { database } of others) copyFileSync(kept, database);
  return true;
}

/** @param {{ port: number, database: string }} lane */
const serveLane = (lane) =>
  serve(TEST_BUILD, lane.port, {
    DATABASE_URL: `file:${lane.database}`,
    REHANG_STAGING_DIR: `${lane.database}-staged`,
  });

remove();
if (await prepare()) {
  await build(TEST_BUILD);
  // The tests begin when the first lane answers: it is the last one to.
  const [first, ...others] = lanes;
  const serving = others.map(serveLane);
  await Promise.all(others.map((lane) => untilHealthy(lane.port)));
  if (first !== undefined) serving.push(serveLane(first));
  process.exitCode = Math.max(...(await Promise.all(serving)));
} else {
  process.exitCode = 1;
}
remove();
