import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { CutOff, receive, tooLarge } from '@/app/load/_staging/receive';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rehang-receive-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const body = (...pieces: string[]) => new Blob(pieces).stream();

describe('an upload', () => {
  test('is written as it came, and known by its hash', async () => {
    const path = join(folder, 'a.csv');
    const { sha256: hash } = await receive(body('job,stage\r\n', 'ü'), path, null);
    expect(readFileSync(path, 'utf8')).toBe('job,stage\r\nü');
    expect(hash).toBe(createHash('sha256').update('job,stage\r\nü').digest('hex'));
  });

  test('that was cut off leaves nothing behind', async () => {
    const path = join(folder, 'a.csv');
    await expect(receive(body('job,sta'), path, 11)).rejects.toThrow(CutOff);
    expect(existsSync(path)).toBe(false);
  });

  test('beyond the limit is told how to mend it', () => {
    expect(tooLarge(300e6)).toBe(
      'The file is larger than 250 MB (300 MB). Split it, for example by year, and load the parts one after another.',
    );
  });
});
