import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { nodeTooOld } from '@/lib/commands/node-version.mjs';
import { answers, portFrom } from '@/lib/commands/serve.mjs';
import { hashOf, isStamped, setStamp } from '@/lib/commands/stamp.mjs';

const folder = mkdtempSync(join(tmpdir(), 'rehang-commands-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the check of Node', () => {
  it('lets 20.19 and everything after it pass', () => {
    for (const version of ['20.19.0', '20.20.2', '22.0.0', '24.1.0']) expect(nodeTooOld(version)).toBeNull();
  });

  it('tells an older one in a sentence what is needed and what is there', () => {
    for (const version of ['20.18.3', '18.20.0']) {
      expect(nodeTooOld(version)).toMatch(`needs Node 20.19 or newer; this is Node ${version}`);
    }
  });

  it('asks for what package.json asks for', () => {
    const { engines } = JSON.parse(readFileSync('package.json', 'utf8')) as { engines: { node: string } };
    expect(engines.node).toBe('>=20.19');
  });
});

describe('what runs on a bare copy', () => {
  it.each([
    'start',
    'test',
    'run',
    'install',
    'build',
    'serve',
    'secret',
    'stamp',
    'node-version',
    'generate',
    'checks',
    'audit',
    'quick-folder',
  ])('%s.mjs imports nothing that has to be installed', (name) => {
    const source = readFileSync(`lib/commands/${name}.mjs`, 'utf8');
    const imported = [...source.matchAll(/^import .*from '([^']+)'|await import\('([^']+)'\)/gm)];
    const names = imported.map(([, fixed, later]) => fixed ?? later ?? '');
    expect(names.filter((from) => !from.startsWith('node:') && !from.startsWith('./'))).toEqual([]);
  });
});

describe('a port', () => {
  it('is 3000 unless PORT says otherwise', () => {
    expect(portFrom(undefined)).toBe(3000);
    expect(portFrom('')).toBe(3000);
    expect(portFrom('8080')).toBe(8080);
  });

  it.each(['eighty', '0', '65536', '80.5', '-1'])('%s is refused in a sentence', (text) => {
    expect(() => portFrom(text)).toThrow(`PORT is "${text}"; it must be a whole number from 1 to 65535.`);
  });

  it('is known to be taken while something listens there', async () => {
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    expect(await answers(port)).toBe(true);
    await new Promise((resolve) => server.close(resolve));
    expect(await answers(port)).toBe(false);
  });
});

describe('a stamp', () => {
  const write = (name: string, text: string) => writeFileSync(join(folder, name), text);

  it('changes with a content, a name and a new file, and with nothing else', () => {
    mkdirSync(join(folder, 'src/inner'), { recursive: true });
    mkdirSync(join(folder, 'src/made'), { recursive: true });
    write('src/a.ts', 'a');
    write('src/inner/b.ts', 'b');
    const hash = () => hashOf(folder, ['src', 'lock.json', 'absent'], ['made']);
    const first = hash();
    write('src/made/by-a-tool.ts', 'x');
    write('elsewhere.ts', 'x');
    expect(hash()).toBe(first);
    write('src/inner/b.ts', 'B');
    const second = hash();
    expect(second).not.toBe(first);
    write('src/inner/c.ts', '');
    expect(hash()).not.toBe(second);
  });

  it('holds until another takes its place', () => {
    const file = join(folder, 'stamp');
    expect(isStamped(file, 'one')).toBe(false);
    setStamp(file, 'one');
    expect(isStamped(file, 'one')).toBe(true);
    expect(isStamped(file, 'two')).toBe(false);
  });
});
