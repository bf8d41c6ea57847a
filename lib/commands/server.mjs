/**
 * The process that listens: the framework's own server within one of ours, which counts requests, lets nobody
 * choose the address that attempts are counted by, and stops in order.
 */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import next from 'next';
import { program } from './program.mjs';
import { root } from './run.mjs';
import { pagesAmong, routeFinder } from './route-finder.mjs';
import { wellFormed } from './well-formed.mjs';
import { answeredWhole } from './whole-page.mjs';

/** Running requests are awaited so long once a stop was asked for, ms; a load must be able to end. */
const PATIENCE = 25_000;

const host = process.env.HOST || '127.0.0.1';
const port = Number(process.env.PORT);
/** Somebody else speaks https for us and says who asks. */
const behindProxy = (process.env.REHANG_ORIGIN ?? '').startsWith('https:');
const folder = process.env.REHANG_DIST_DIR ?? '.next';

// Figures that another program made are not gone on with.
process.env.REHANG_PROGRAM = program();

const app = next({ dev: false, dir: root, hostname: host, port });
await app.prepare();
const handle = app.getRequestHandler();
const manifest = (/** @type {string} */ name) => JSON.parse(readFileSync(join(root, folder, name), 'utf8'));
const routeOf = routeFinder(manifest('routes-manifest.json'));
const pages = pagesAmong(manifest('app-path-routes-manifest.json'));

/** Set by the program when it begins; see lib/serving. Nothing is answered before: it says what a page may do. */
const serving = await begun();

async function begun() {
  for (let tries = 0; tries < 1200; tries++) {
    const { rehangServing } = /** @type {any} */ (globalThis);
    if (rehangServing !== undefined) return rehangServing;
    await wait(25);
  }
  throw new Error('The program did not begin within half a minute.');
}

const server = createServer((request, response) => {
  request.url = wellFormed(request.url ?? '/');
  const start = performance.now();
  const route = routeOf(request.url);
  response.once('close', () => {
    const seconds = (performance.now() - start) / 1000;
    serving.answered(request.method ?? 'GET', route, response.statusCode, seconds);
    // Answered as one that stays open: nobody else would close it before the patience is over.
    if (stopping) request.socket.destroySoon();
  });
  if (!behindProxy) {
    const {
      'x-forwarded-proto': _proto,
      'x-forwarded-host': _host,
      'x-forwarded-port': _port,
      ...own
    } = request.headers;
    request.headers = own;
    request.headers['x-forwarded-for'] = request.socket.remoteAddress ?? '';
  }
  if (stopping) response.setHeader('Connection', 'close');
  answer(request, response, pages.has(route)).catch(() => {
    if (!response.headersSent) response.statusCode = 500;
    response.end();
  });
});

/**
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 * @param {boolean} isPage
 */
async function answer(request, response, isPage) {
  if (await serving.answerAgain(request, response)) return;
  const made = isPage ? await serving.turn() : () => undefined;
  try {
    // Whoever gave up waiting wants no page.
    if (response.destroyed) return;
    serving.head(request, response);
    const pieces = isPage ? serving.sendWhole(request, response, made) : null;
    await serving.asOfOneMoment(request, response, () =>
      answeredWhole(request, pieces, () => handle(request, response)),
    );
  } finally {
    made();
  }
}

// A large file over a slow line takes its time; a header never does.
server.requestTimeout = 30 * 60_000;
server.headersTimeout = 20_000;
// Longer than browsers and proxies keep an idle line: closed from here, it would cut off a request that is on its way.
server.keepAliveTimeout = 65_000;

/** @type {Set<import('node:net').Socket>} */
const lines = new Set();
server.on('connection', (line) => {
  lines.add(line);
  line.once('close', () => lines.delete(line));
});

let stopping = false;
let asked = 0;

async function stop() {
  // A terminal asks every process, and whoever started this one asks again: only a third time is impatience.
  if (++asked > 2) process.exit(1);
  if (stopping) return;
  stopping = true;
  const closed = new Promise((resolve) => server.close(resolve));
  server.closeIdleConnections();
  // A browser opens lines ahead: one on which nothing was ever asked is not idle to the framework.
  for (const line of lines) if (line.bytesRead === 0) line.destroy();
  const late = setTimeout(() => server.closeAllConnections(), PATIENCE);
  await closed;
  clearTimeout(late);
  await serving.stop();
  process.exit(0);
}

process.on('SIGTERM', () => void stop());
process.on('SIGINT', () => void stop());

server.once('error', (error) => {
  console.error(`${host}:${port} cannot be listened at: ${error.message}`);
  process.exit(1);
});
server.listen(port, host);
