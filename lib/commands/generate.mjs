/** Writes the SQLite and the PostgreSQL schema from the one models file, and a database client for each. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const ENGINES = ['sqlite', 'postgresql'];

const modelsFile = join(root, 'prisma/models.prisma');
const generated = join(root, 'lib/store/generated');
const stampFile = join(generated, 'stamp');

/**
 * @param {string} engine
 * @returns {string} the models as one database's schema
 */
export function schemaFor(engine) {
  return (
    [
      `datasource db {\n  provider = "${engine}"\n}\n`,
      `generator client {\n  provider        = "prisma-client"\n  output          = "../../lib/store/generated/${engine}"`,
      `  runtime         = "nodejs"\n  moduleFormat    = "esm"\n}\n\n`,
    ].join('\n') + readFileSync(modelsFile, 'utf8')
  );
}

/** @param {string} engine */
function generateOne(engine) {
  const schema = join(root, `prisma/generated/${engine}.prisma`);
  mkdirSync(join(root, 'prisma/generated'), { recursive: true });
  writeFileSync(schema, schemaFor(engine));
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      [join(root, 'node_modules/prisma/build/index.js'), 'generate', '--schema', schema],
      {
        cwd: root,
        // Generation is WebAssembly: any existing program stands in for the engine that would be downloaded.
        env: {
          ...process.env,
          PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
          PRISMA_HIDE_UPDATE_MESSAGE: '1',
          CHECKPOINT_DISABLE: '1',
        },
        stdio: ['ignore', 'pipe', 'pipe'],
      },
    );
    let said = '';
    child.stdout.on('data', (text) => (said += text));
    child.stderr.on('data', (text) => (said += text));
    child.on('error', reject);
    child.on('close', (code) =>
      code === 0
        ? resolve(undefined)
        : reject(new Error(`The ${engine} client could not be generated:\n${said}`)),
    );
  });
}

function stamp() {
  const hash = createHash('sha256');
  for (const engine of ENGINES) hash.update(schemaFor(engine));
  hash.update(readFileSync(join(root, 'node_modules/prisma/package.json')));
  return hash.digest('hex');
}

/** @returns {Promise<boolean>} false where the clients were there already */
export async function generate() {
  const wanted = stamp();
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted) return false;
  rmSync(generated, { recursive: true, force: true });
  await Promise.all(ENGINES.map(generateOne));
  writeFileSync(stampFile, wanted);
  return true;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  console.log((await generate()) ? 'Database clients generated.' : 'Database clients are up to date.');
}
