import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { BatchReport } from '@/lib/reports';

const root = fileURLToPath(new URL('../../../', import.meta.url));

interface Outcome {
  code: number;
  stdout: string;
  stderr: string;
}

/** Runs the command as a user does, without a database, a build or a server. */
const report = (...args: string[]) => begun('lib/commands/begin.mjs', 'lib/commands/report.ts', ...args);

function begun(...command: string[]): Promise<Outcome> {
  return new Promise((resolve) => {
    execFile(process.execPath, command, { cwd: root, maxBuffer: 1 << 26 }, (error, stdout, stderr) => {
      resolve({ code: error === null ? 0 : Number(error.code), stdout, stderr });
    });
  });
}

const sample = (name: string) => `tests/reference/samples/${name}`;

describe('npm run report', () => {
  const small = report(sample('small.csv'));

  it('prints one JSON document on standard output, and the rest on standard error', async () => {
    const { code, stdout, stderr } = await small;
    expect(code).toBe(0);
    const document = JSON.parse(stdout) as BatchReport;
    expect(document.technicians.map(({ technician }) => technician)).toEqual(['T01', 'T02', 'T03']);
    expect(document.technicians.reduce((sum, { readings }) => sum + readings, 0)).toBe(456);
    expect(document.heights.length).toBeGreaterThan(100);
    for (const { p_neither, p_gauge, p_body, p_both } of document.heights) {
      expect(p_neither + p_gauge + p_body + p_both).toBeCloseTo(1, 9);
    }
    expect(stderr).toContain('456 readings of 6 jobs');
  });

  it('says the same where it runs from its modules, as in a folder that may not be written', async () => {
    const { code, stdout } = await begun('--import', 'tsx', 'lib/commands/report.ts', sample('small.csv'));
    expect(code).toBe(0);
    expect(stdout).toBe((await small).stdout);
  });

  it('refuses a faulty file with every fault, and prints nothing else', async () => {
    const { code, stdout, stderr } = await report(sample('small.csv'), sample('broken.csv'));
    expect(code).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toContain('broken.csv cannot be read');
    expect(stderr).toContain('Line 5, column value_mm');
    expect(stderr).toContain('Line 60, column tolerance_mm');
  });

  it('counts a file that is named twice once', async () => {
    const { stdout } = await small;
    const twice = await report(sample('small.csv'), sample('small.csv'));
    expect(twice.stdout).toBe(stdout);
    expect(twice.stderr).toContain('456 readings are in more than one file');
  });

  it.each([
    [['no-such-file.csv', 'tests'], /There is no file no-such-file\.csv\.[^]*tests is a folder\./],
    [[], 'Name at least one measurement file.'],
    [['--time-zone', 'Mars/Olympus', sample('small.csv')], 'not a time zone'],
    [['--colour', sample('small.csv')], '--colour'],
  ])('%j is told in a sentence', async (args, words) => {
    const { code, stdout, stderr } = await report(...args);
    expect([code, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(words);
    expect(stderr).not.toContain('    at ');
  });
});
