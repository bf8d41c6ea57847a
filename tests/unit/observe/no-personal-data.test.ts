import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Fields that an entry of the log may have: numbers, words of the program's own, row numbers. */
const ALLOWED = new Set([
  ...['shop', 'token', 'report', 'bytes', 'readings', 'added', 'faults', 'seconds', 'running', 'task'],
  ...['why', 'what', 'route', 'method', 'kind'],
]);

const LOG = readFileSync('lib/observe/log.ts', 'utf8');

describe('what the program logs', () => {
  it('has no field that could hold a person, a vehicle, an address or a file', () => {
    const entries = LOG.slice(LOG.indexOf('export const note'));
    const types = [...entries.matchAll(/\(of: \{([^}]*)\}|\(left: \{([^}]*)\}/g)].map(
      ([, of = '', left = '']) => of + left,
    );
    const fields = types.flatMap((text) => [...text.matchAll(/(\w+)\??:/g)].map(([, name = '']) => name));
    expect(fields.length).toBeGreaterThan(10);
    expect(fields.filter((name) => !ALLOWED.has(name))).toEqual([]);
  });

  it('goes by these entries alone: nothing that serves writes to the console by itself', () => {
    const served = [
      ...sources('app'),
      ...sources('lib').filter(
        (path) => !/^lib\/(commands|stats|assess|store\/generated|observe\/console)/.test(path),
      ),
    ];
    expect(served.length).toBeGreaterThan(100);
    expect(served.filter((path) => /console\.\w+\(/.test(readFileSync(path, 'utf8')))).toEqual([]);
  });
});

function sources(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.includes('.tmp.'))
    .map((name) => join(folder, name));
}
