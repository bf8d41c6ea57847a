import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pieceInPlace } from '@/lib/serving/piece-place';
import { sendWhole, wholeOf } from '@/lib/serving/send-whole';

let make: (request: IncomingMessage, response: ServerResponse, pieces: string[] | null) => void;
let last: ServerResponse;
const server = createServer((request, response) => {
  last = response;
  make(request, response, sendWhole(request, response));
});
beforeAll(() => new Promise<void>((resolve) => void server.listen(0, '127.0.0.1', resolve)));
afterAll(() => new Promise((resolve) => void server.close(resolve)));

const ask = async (init: RequestInit = {}) => {
  const { port } = server.address() as AddressInfo;
  const response = await fetch(`http://127.0.0.1:${port}/`, { redirect: 'manual', ...init });
  return { status: response.status, headers: response.headers, text: await response.text() };
};
/** In parts, as the framework hands a page over. */
const inParts = (_: IncomingMessage, response: ServerResponse) => {
  response.setHeader('Content-Type', 'text/html; charset=utf-8');
  response.flushHeaders();
  expect(response.headersSent).toBe(false);
  response.write('<p>größ');
  response.write(new TextEncoder().encode('er '));
  response.end('</p>');
};

describe('a page', () => {
  it('that comes in parts is sent in one, packed, the framework not asked to pack it', async () => {
    make = (request, response) => {
      expect(request.headers['accept-encoding']).toBeUndefined();
      inParts(request, response);
    };
    const { headers, text } = await ask();
    expect(text).toBe('<p>größer </p>');
    expect(headers.get('content-encoding')).toBe('gzip');
    expect(Number(headers.get('content-length'))).toBeGreaterThan(0);
    expect(Buffer.concat(wholeOf(last)?.map(({ plain }) => plain) ?? []).toString()).toBe(text);
  });

  it('keeps the status and headers that it was begun with', async () => {
    make = (_, response) => {
      response.writeHead(404, { 'X-Kept': 'yes' });
      response.end('none');
    };
    const { status, headers, text } = await ask();
    expect([status, headers.get('x-kept'), text]).toEqual([404, 'yes', 'none']);
  });

  it('without a body has none, nor is said to be packed', async () => {
    make = (_, response) => {
      response.writeHead(307, { Location: '/sign-in' });
      response.end();
    };
    const { status, headers, text } = await ask();
    expect([status, headers.get('location'), text]).toEqual([307, '/sign-in', '']);
    expect(headers.get('content-encoding')).toBeNull();
  });

  it('has its pieces where the framework left a place for them, whenever they came before', async () => {
    const [short, long] = ['<b>größer</b>', '<i>kleiner</i>'.repeat(300)];
    make = (_, response, pieces) => {
      pieces?.push(long, short);
      response.write(`<p>${pieceInPlace(1)}</p><p>`);
      // A chunk may end anywhere.
      response.write(pieceInPlace(0).slice(0, 7));
      response.end(`${pieceInPlace(0).slice(7)}</p>${pieceInPlace(0)}`);
    };
    for (let time = 0; time < 3; time++)
      expect((await ask()).text).toBe(`<p>${short}</p><p>${long}</p>${long}`);
    expect(wholeOf(last)?.filter(({ packed }) => packed !== null)).toHaveLength(2);
  });

  it('that is large is sent whole too', async () => {
    const part = 'x'.repeat(1_000_000);
    make = (_, response) => {
      for (let count = 0; count < 6; count++) response.write(part);
      response.end('end');
    };
    expect((await ask()).text).toBe(`${part.repeat(6)}end`);
  });

  it('that breaks off is no page', async () => {
    make = (_, response) => {
      response.write('half');
      response.destroy();
    };
    await expect(ask()).rejects.toThrow();
  });
});

it('is left as it is for who takes nothing packed, and where only the head is asked for', async () => {
  make = (_, response, pieces) => {
    expect(pieces).toBeNull();
    response.end('plain');
  };
  expect(
    (await ask({ headers: { 'accept-encoding': 'identity' } })).headers.get('content-encoding'),
  ).toBeNull();
  expect((await ask({ method: 'HEAD' })).headers.get('content-encoding')).toBeNull();
});
