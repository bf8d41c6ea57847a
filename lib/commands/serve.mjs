/** Serves the built pages until it is told to stop. */
import { connect, createServer } from 'node:net';
import { node } from './run.mjs';

/** This machine alone, unless `HOST` names another address to listen at. */
const HOST = process.env.HOST || '127.0.0.1';

/** Where this machine reaches it: who listens everywhere listens here too. */
const HERE = ['0.0.0.0', '::'].includes(HOST) ? '127.0.0.1' : HOST;

/**
 * @param {string | undefined} text
 * @returns {number}
 */
export function portFrom(text) {
  if (text === undefined || text === '') return 3000;
  const port = Number(text);
  if (Number.isInteger(port) && port >= 1 && port <= 65535) return port;
  throw new Error(`PORT is "${text}"; it must be a whole number from 1 to 65535.`);
}

/**
 * @param {number} port
 * @returns {Promise<boolean>} whether something listens there
 */
export function answers(port) {
  return new Promise((resolve) => {
    const socket = connect({ host: HERE, port });
    socket.once('connect', () => (socket.destroy(), resolve(true)));
    socket.once('error', () => resolve(false));
  });
}

/** @returns {Promise<number>} the first of so many ports in a row that nothing listens on */
export async function freePorts(/** @type {number} */ count) {
  for (;;) {
    const first = await freePort();
    const others = Array.from({ length: count - 1 }, (_, index) => answers(first + 1 + index));
    if (first + count <= 65536 && !(await Promise.all(others)).includes(true)) return first;
  }
}

/** @returns {Promise<number>} a port that nothing listens on */
export function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, HOST, () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

/**
 * @param {number} port
 * @returns {Promise<boolean>} false where it does not become so within a minute
 */
export async function untilHealthy(port) {
  for (let attempt = 0; attempt < 600; attempt++) {
    const healthy = await fetch(`http://${HERE.includes(':') ? `[${HERE}]` : HERE}:${port}/health`).then(
      (response) => response.ok,
      () => false,
    );
    if (healthy) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}

/**
 * @param {string} folder of the build
 * @param {number} port
 * @param {NodeJS.ProcessEnv} [env] in addition to the present one
 * @returns {Promise<number>} the server's exit code
 */
export async function serve(folder, port, env = {}) {
  const server = node(
    ['lib/commands/server.mjs'],
    { ...env, NODE_ENV: 'production', REHANG_DIST_DIR: folder, HOST, PORT: String(port) },
    'inherit',
  );
  const origin = process.env.REHANG_ORIGIN || `http://localhost:${port}`;
  void untilHealthy(port).then((healthy) => {
    if (healthy) console.log(`\nRehang is at ${origin}   (stop it with Ctrl+C)\n`);
  });
  const { code } = await server;
  return code;
}
