import { chmodSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { secretFrom } from '@/lib/commands/secret.mjs';

const folder = mkdtempSync(join(tmpdir(), 'rehang-secret-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const mode = (file: string) => statSync(file).mode & 0o777;

describe('the secret', () => {
  it('is the one that is given, where it is long enough to be one', () => {
    const given = 'x'.repeat(32);
    expect(secretFrom(given, join(folder, 'unused'))).toBe(given);
    expect(() => secretFrom('short', join(folder, 'unused'))).toThrow(
      /REHANG_SECRET has 5 characters; it needs 32/,
    );
  });

  it('is made once where none is given, and kept where only this user can read it', () => {
    const file = join(folder, 'new/secret');
    const made = secretFrom(undefined, file);
    expect(made).toMatch(/^[A-Za-z0-9_-]{43}$/);
    expect(mode(file)).toBe(0o600);
    chmodSync(file, 0o644);
    expect(secretFrom('', file)).toBe(made);
    expect(mode(file)).toBe(0o600);
    expect(secretFrom(undefined, join(folder, 'other'))).not.toBe(made);
  });

  it('that was kept and spoilt is not taken', () => {
    const file = join(folder, 'spoilt');
    writeFileSync(file, '\n');
    expect(() => secretFrom(undefined, file)).toThrow(/holds no secret. Delete it/);
  });

  it('is kept out of the repository', () => {
    expect(readFileSync('.gitignore', 'utf8').split('\n')).toContain('/data/');
  });
});
