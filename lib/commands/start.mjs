/**
 * `npm start`: everything from a fresh copy to a served shop. Runs before anything is installed, so it
 * imports nothing but Node's own. Each step is skipped when it was done for the same inputs.
 */
import { nodeTooOld } from './node-version.mjs';

const tooOld = nodeTooOld();
if (tooOld !== null) {
  console.error(tooOld);
  process.exit(1);
}

const { node, stopChildrenWithUs } = await import('./run.mjs');
const { install } = await import('./install.mjs');
const { build } = await import('./build.mjs');
const { answers, portFrom, serve } = await import('./serve.mjs');
const { secretFrom } = await import('./secret.mjs');

stopChildrenWithUs();

/** A step that was asked to stop is no failure. */
let stopping = false;
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM']))
  process.on(signal, () => (stopping = true));

try {
  const port = portFrom(process.env.PORT);
  process.env.REHANG_SECRET = secretFrom(process.env.REHANG_SECRET);
  if (await answers(port)) {
    throw new Error(
      `Port ${port} of this machine is taken. Stop what uses it, or choose another: PORT=3001 npm start`,
    );
  }
  await install();
  const { generate } = await import('./generate.mjs');
  if (await generate()) console.log('Database clients generated.');
  const { bundle, OF_A_SERVER } = await import('./programs.mjs');
  // Each program does without where it must.
  await bundle(OF_A_SERVER).catch(() => undefined);
  const prepared = await node(['lib/commands/begin.mjs', 'lib/commands/prepare.ts']);
  if (prepared.code !== 0 && !stopping)
    throw new Error('The database could not be made ready; the reason stands above.');
  if (!stopping) await build('.next');
  if (!stopping) process.exitCode = await serve('.next', port);
  if (stopping) process.exitCode = 0;
} catch (error) {
  if (!stopping) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
