/**
 * Programs in TypeScript, each bundled into one file: resolving and compiling some three hundred modules one by one
 * takes four times as long as most programs do for their work. A bundle is made when a program is first begun, kept
 * with the installed packages, and good as long as its sources are what they were.
 */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { extname, join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from './run.mjs';

/** Those that a served shop starts; they are bundled before they are needed. */
export const OF_A_SERVER = [
  'lib/commands/prepare.ts',
  'lib/commands/refresh.ts',
  'lib/commands/take-file.ts',
  'lib/commands/scheduled-report.ts',
  'app/load/_staging/task-program.ts',
  'lib/assess/crew/thread.ts',
  'lib/store/reader/thread.ts',
];

const folder = join(root, 'node_modules/.rehang-programs');

/** Bundles of earlier sources may be under way somewhere: they go when they are so old, ms. */
const OUTDATED = 3_600_000;

const digest = (/** @type {string} */ text) => createHash('sha256').update(text).digest('hex');

/**
 * Packages that are bundled too: plain JavaScript that asks for nothing but modules, some three hundred small ones, which
 * take a thread longer to find and compile than all else that it begins with.
 */
const WITHIN = ['@stdlib/', 'csv-parse', 'luxon', 'simple-statistics'];

/** All others stay outside. */
function outside() {
  /** @type {{ dependencies: Record<string, string>, devDependencies: Record<string, string> }} */
  const { dependencies, devDependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return Object.keys({ ...dependencies, ...devDependencies })
    .filter((name) => !WITHIN.some((within) => name.startsWith(within)))
    .flatMap((name) => [name, `${name}/*`]);
}

/** What a bundle comes from beside its own modules; packages are what the lock says. */
const ways = () =>
  digest(
    [
      root,
      ...['lib/commands/programs.mjs', 'tsconfig.json', 'package-lock.json'].map((path) =>
        readFileSync(join(root, path), 'utf8'),
      ),
    ].join('\0'),
  );

/** A module of a package may ask for one of Node's in the way that a bundle has not. */
const REQUIRE = `import { createRequire as __requireFrom } from 'node:module'; const require = __requireFrom(${JSON.stringify(pathToFileURL(join(root, 'package.json')).href)});`;

/**
 * @param {readonly string[]} modules below root
 * @param {(path: string) => string} digestOf
 */
const stampOf = (modules, digestOf) => digest([ways(), ...modules.map(digestOf)].join(' ')).slice(0, 16);

const nameOf = (/** @type {string} */ program) => program.replace(/\.ts$/, '').replaceAll('/', '.');

/**
 * @param {string} program path below root
 * @returns {string | null} its bundle, where there is one of these very sources
 */
function bundled(program) {
  try {
    /** @type {{ modules: string[], stamp: string }} */
    const { modules, stamp } = JSON.parse(readFileSync(join(folder, `${nameOf(program)}.json`), 'utf8'));
    const file = join(folder, `${nameOf(program)}.${stamp}.mjs`);
    const now = stampOf(modules, (path) => digest(readFileSync(join(root, path), 'utf8')));
    return now === stamp && existsSync(file) ? file : null;
  } catch {
    return null;
  }
}

/**
 * Bundles those that are not, in one go. Most packages stay outside, and a module goes on knowing its own place. Several
 * processes may do so at once: what is written becomes visible whole.
 * @param {readonly string[]} programs paths below root
 */
export async function bundle(programs) {
  const wanted = programs.filter((program) => bundled(program) === null);
  if (wanted.length === 0) return;
  mkdirSync(folder, { recursive: true });
  const { build, stop } = await import('esbuild');
  /** What was read of each module, so that a change meanwhile is none of this bundle. @type {Map<string, string>} */
  const read = new Map();
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: Object.fromEntries(wanted.map((program) => [nameOf(program), program])),
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    external: outside(),
    banner: { js: REQUIRE },
    sourcemap: 'external',
    sourcesContent: false,
    metafile: true,
    write: false,
    outdir: folder,
    logLevel: 'silent',
    plugins: [
      { name: 'own modules', setup: (building) => building.onLoad({ filter: /\.(ts|mjs|json)$/ }, load) },
    ],
  }).finally(stop);

  /** @param {{ path: string }} module */
  function load({ path }) {
    if (isOfPackage(path)) return null;
    const text = readFileSync(path, 'utf8');
    read.set(relative(root, path), digest(text));
    const contents = text.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href));
    return { contents, loader: LOADERS[extname(path)] };
  }

  for (const program of wanted) {
    const name = nameOf(program);
    const of = (/** @type {string} */ end) =>
      outputFiles.find(({ path }) => path === join(folder, name + end))?.text;
    const { inputs = {} } = metafile.outputs[relative(root, join(folder, `${name}.js`))] ?? {};
    const modules = Object.keys(inputs).filter((path) => !isOfPackage(path));
    const stamp = stampOf(modules, (path) => read.get(path) ?? '');
    const file = `${name}.${stamp}.mjs`;
    place(`${file}.map`, of('.js.map') ?? '');
    place(file, `${of('.js')}\n//# sourceMappingURL=${file}.map\n`);
    place(`${name}.json`, JSON.stringify({ modules, stamp }));
    removeOutdated(name, stamp);
  }
}

/** Whether a package brought a module. */
const isOfPackage = (/** @type {string} */ path) => /(^|[/\\])node_modules[/\\]/.test(path);

/** @type {Record<string, 'ts' | 'js' | 'json'>} */
const LOADERS = { '.ts': 'ts', '.mjs': 'js', '.json': 'json' };

/**
 * @param {string} name
 * @param {string} text
 */
function place(name, text) {
  const meanwhile = join(folder, `.${process.pid}-${Math.random().toString(36).slice(2)}-${name}`);
  writeFileSync(meanwhile, text);
  renameSync(meanwhile, join(folder, name));
}

/**
 * @param {string} name
 * @param {string} stamp of what stays
 */
function removeOutdated(name, stamp) {
  for (const file of readdirSync(folder)) {
    if (!file.includes(`${name}.`) || file === `${name}.json` || file.startsWith(`${name}.${stamp}`))
      continue;
    const path = join(folder, file);
    const age = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Infinity);
    if (age > OUTDATED) rmSync(path, { force: true });
  }
}

/**
 * Runs a program in this process or thread: its bundle, or its modules as they are where it cannot be bundled (in a
 * folder that may not be written, say).
 * @param {string} program path below root
 */
export async function begin(program) {
  let file = bundled(program);
  if (file === null) {
    await bundle([program]).catch(() => undefined);
    file = bundled(program);
  }
  // So that a fault names the module and not the bundle.
  if (file !== null) process.setSourceMapsEnabled(true);
  else (await import('tsx/esm/api')).register();
  await import(pathToFileURL(file ?? join(root, program)).href);
}
