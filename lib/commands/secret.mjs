/** What sessions are signed with: from the environment, or made once and kept where only this user can read it. */
import { randomBytes } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { root } from './run.mjs';

const KEPT = join(root, 'data/secret');

/**
 * @param {string | undefined} given `REHANG_SECRET`
 * @param {string} [file] where one that was made is kept
 * @returns {string}
 */
export function secretFrom(given, file = KEPT) {
  if (given !== undefined && given !== '') {
    if (given.length >= 32) return given;
    throw new Error(
      `REHANG_SECRET has ${given.length} characters; it needs 32 or more, by chance: openssl rand -base64 32`,
    );
  }
  mkdirSync(dirname(file), { recursive: true });
  try {
    writeFileSync(file, `${randomBytes(32).toString('base64url')}\n`, { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
  }
  // Also where it was copied here with wider permissions.
  chmodSync(file, 0o600);
  const kept = readFileSync(file, 'utf8').trim();
  if (kept.length >= 32) return kept;
  throw new Error(
    `${file} holds no secret. Delete it to have one made; everybody has to sign in again then.`,
  );
}
