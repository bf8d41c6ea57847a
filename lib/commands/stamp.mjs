/** Stamps: a file that says from which inputs a costly step was done, so that it is skipped until they change. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * @param {string} root
 * @param {readonly string[]} paths files and folders below root; absent ones count as empty
 * @param {readonly string[]} [skip] names of folders that are not looked into
 * @returns {string} a hash of every name and content
 */
export function hashOf(root, paths, skip = []) {
  const hash = createHash('sha256');
  /** @param {string} path */
  const take = (path) => {
    const full = join(root, path);
    if (!existsSync(full)) return;
    if (!statSync(full).isDirectory()) {
      hash.update(`${path}\0`).update(readFileSync(full)).update('\0');
      return;
    }
    for (const name of readdirSync(full).sort()) if (!skip.includes(name)) take(`${path}/${name}`);
  };
  for (const path of paths) take(path);
  return hash.digest('hex');
}

/**
 * @param {string} file
 * @param {string} stamp
 */
export const isStamped = (file, stamp) => existsSync(file) && readFileSync(file, 'utf8') === stamp;

/**
 * @param {string} file
 * @param {string} stamp
 */
export const setStamp = (file, stamp) => writeFileSync(file, stamp);
