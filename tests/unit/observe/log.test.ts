import { Writable } from 'node:stream';
import { describe, expect, it, vi } from 'vitest';
import { logLevel, makeLog, told } from '@/lib/observe';

function lines(): { log: ReturnType<typeof makeLog>; said: () => string } {
  let text = '';
  const sink = new Writable({
    write(piece: Buffer, _encoding, done) {
      text += piece.toString();
      done();
    },
  });
  return { log: makeLog(sink), said: () => text };
}

/** As the program throws it: for the person who sees it, so it names somebody. */
const personal = () => new RangeError('Nobody with the code GRETA works in this shop (greta@shop.example).');

describe('the log', () => {
  it('is one JSON object a line', () => {
    const { log, said } = lines();
    log.info({ shop: 1 }, 'one');
    log.warn('two');
    const objects = said()
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as unknown);
    expect(objects).toMatchObject([
      { level: 'info', shop: 1, msg: 'one' },
      { level: 'warn', msg: 'two' },
    ]);
  });

  it('tells of an error where it was thrown and never what it says', () => {
    const { log, said } = lines();
    log.error({ ...told(personal()) }, 'request failed');
    expect(said()).toContain('log.test.ts');
    expect(said()).toContain('RangeError');
    expect(said()).not.toMatch(/greta/i);
  });

  it('has the level that REHANG_LOG names, and info where that is no level', () => {
    expect(logLevel('warn')).toBe('warn');
    expect(logLevel('loud')).toBe('info');
    vi.stubEnv('REHANG_LOG', 'error');
    const { log, said } = lines();
    log.info('one');
    expect(said()).toBe('');
    vi.unstubAllEnvs();
  });
});

describe('what is told of an error', () => {
  it('leaves out a message of several lines, also one that looks like a place in the program', () => {
    const error = new Error('first\n    at GRETA (greta.ts:1:1)\nlast');
    expect(JSON.stringify(told(error))).not.toMatch(/greta/i);
    expect(told(error).at?.[0]).toContain('log.test.ts');
  });

  it('holds a code, and nothing that could be a sentence', () => {
    expect(told(Object.assign(personal(), { code: 'SQLITE_FULL' }))).toMatchObject({ code: 'SQLITE_FULL' });
    expect(told(Object.assign(personal(), { code: 'greta is out' }))).not.toHaveProperty('code');
    expect(told(new Error('no', { cause: { originalCode: '53100' } }))).toMatchObject({ code: '53100' });
  });

  it('of what is no error is its kind alone', () => {
    expect(told('greta')).toEqual({ error: 'string' });
    expect(told(null)).toEqual({ error: 'object' });
  });
});
