/** Builds the pages, unless these sources are built already. */
import { join } from 'node:path';
import { node, root } from './run.mjs';
import { hashOf, isStamped, setStamp } from './stamp.mjs';

const SOURCES = ['app', 'lib', 'public', 'prisma/models.prisma', 'next.config.ts', 'tsconfig.json'];

/**
 * @param {string} folder where the build goes, below the root
 * @returns {Promise<boolean>} false where it was there
 */
export async function build(folder) {
  const stampFile = join(root, folder, 'rehang-built');
  const sources = hashOf(root, [...SOURCES, 'package-lock.json'], ['generated']);
  const stamp = `${sources} ${process.version}`;
  if (isStamped(stampFile, stamp)) return false;
  console.log('Building the pages …');
  const { code } = await node(['node_modules/next/dist/bin/next', 'build'], {
    NODE_ENV: 'production',
    REHANG_DIST_DIR: folder,
  });
  if (code !== 0) throw new Error('The pages could not be built; the reason stands above.');
  setStamp(stampFile, stamp);
  return true;
}
