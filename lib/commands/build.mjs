/** Builds the pages, unless these sources are built already. */
import { join } from 'node:path';
import { node, root } from './run.mjs';
import { hashOf, isStamped, setStamp } from './stamp.mjs';

const SOURCES = [
  ...['app', 'lib', 'public', 'instrumentation.ts'],
  ...['prisma/models.prisma', 'next.config.ts', 'tsconfig.json'],
];

/**
 * @param {string} folder where the build goes, below the root
 * @param {'inherit' | 'pipe'} [output] piped, it is told only where the build fails
 * @returns {Promise<boolean>} false where it was there
 */
export async function build(folder, output = 'inherit') {
  const stampFile = join(root, folder, 'rehang-built');
  const sources = hashOf(root, [...SOURCES, 'package-lock.json'], ['generated']);
  const stamp = `${sources} ${process.version}`;
  if (isStamped(stampFile, stamp)) return false;
  if (output === 'inherit') console.log('Building the pages …');
  const env = { NODE_ENV: 'production', REHANG_DIST_DIR: folder };
  const { code, output: said } = await node(['node_modules/next/dist/bin/next', 'build'], env, output);
  if (code !== 0) process.stdout.write(said);
  if (code !== 0) throw new Error('The pages could not be built; the reason stands above.');
  setStamp(stampFile, stamp);
  return true;
}
