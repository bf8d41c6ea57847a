import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { Pool } from '@/lib/assess/crew/pool';

/** Says who it is and what it was asked, after a moment in which others may be asked. */
const PROGRAM = `
import { parentPort, threadId } from 'node:worker_threads';
parentPort.on('message', ({ of }) => setTimeout(() => parentPort.postMessage({ by: threadId, of }), 20));
`;

describe('a pool of two threads, asked apart', () => {
  const folder = mkdtempSync(join(tmpdir(), 'pool-'));
  const program = join(folder, 'program.mjs');
  writeFileSync(program, PROGRAM);
  const pool = new Pool(pathToFileURL(program), 2);
  afterAll(async () => {
    await pool.close();
    rmSync(folder, { recursive: true });
  });

  it('answers in the order in which it was asked, and has both ends looked at by the same two each time', async () => {
    const asked = Array.from({ length: 12 }, (_, of) => of);
    const askAll = async () =>
      (await Promise.all(asked.map((of) => pool.ask({ method: 'say', of }, true)))) as {
        by: number;
        of: number;
      }[];
    // Whoever starts late is left little.
    await pool.askAll({ method: 'say', of: 0 });
    const first = await askAll();
    const second = await askAll();
    for (const answers of [first, second]) expect(answers.map(({ of }) => of)).toEqual(asked);
    const [begin, end] = [first.at(0)?.by, first.at(-1)?.by];
    expect(begin).not.toBe(end);
    expect(second.at(0)?.by).toBe(begin);
    expect(second.at(-1)?.by).toBe(end);
  });
});
