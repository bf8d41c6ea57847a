import type { IncomingMessage, OutgoingHttpHeader, OutgoingHttpHeaders, ServerResponse } from 'node:http';
import { promisify } from 'node:util';
import { gzip as gzipped, gzipSync } from 'node:zlib';
import { bytesOf } from './bytes-of';

const gzip = promisify(gzipped);

/** A page packed by more is a tenth smaller and takes twice as long. */
export const LEVEL = 3;

/** Bytes; to hand less to another thread takes longer than to pack it. */
const AT_ONCE = 64_000;

/** Bytes; an answer that grows beyond is sent as it comes, not packed. */
const MOST = 4_000_000;

const wholes = new WeakMap<ServerResponse, Buffer>();

/** The body of an answer that was sent as a whole, before it was packed. */
export const wholeOf = (response: ServerResponse): Buffer | undefined => wholes.get(response);

/**
 * Has a page sent, and packed, once it is whole. The framework hands over a page in a dozen parts of the same
 * millisecond, and would pack and send each by itself.
 * @param made is told once the page is whole, before it is packed and sent
 */
export function sendWhole(
  request: IncomingMessage,
  response: ServerResponse,
  made: () => void = () => undefined,
): void {
  if (request.method !== 'GET' || !/\bgzip\b/.test(request.headers['accept-encoding'] ?? '')) return;
  // The framework need not pack what is packed here.
  delete request.headers['accept-encoding'];
  const own = {
    write: response.write.bind(response),
    end: response.end.bind(response),
    writeHead: response.writeHead.bind(response),
    flushHeaders: response.flushHeaders.bind(response),
  };
  let parts: Buffer[] = [];
  let size = 0;

  const release = () => {
    Object.assign(response, own);
    for (const part of parts) response.write(part);
    parts = [];
  };
  const take = (chunk: unknown, encoding: unknown) => {
    const bytes = bytesOf(chunk, encoding);
    if (bytes === null) return;
    parts.push(bytes);
    size += bytes.length;
  };
  const finish = async () => {
    const whole = Buffer.concat(parts, size);
    Object.assign(response, own);
    if (size === 0 || response.hasHeader('content-encoding')) {
      response.end(whole);
      return;
    }
    wholes.set(response, whole);
    const packed = size < AT_ONCE ? gzipSync(whole, { level: LEVEL }) : await gzip(whole, { level: LEVEL });
    if (response.destroyed) return;
    response.setHeader('Content-Encoding', 'gzip');
    response.setHeader('Content-Length', packed.length);
    response.end(packed);
  };
  Object.assign(response, {
    flushHeaders: () => undefined,
    writeHead: (status: number, ...rest: unknown[]) => {
      response.statusCode = status;
      const headers = rest.find((one) => typeof one === 'object' && one !== null);
      for (const [name, value] of Object.entries((headers ?? {}) as OutgoingHttpHeaders))
        response.setHeader(name, value as OutgoingHttpHeader);
      return response;
    },
    write: (chunk: unknown, encoding: unknown) => {
      take(chunk, encoding);
      if (size > MOST) release();
      return true;
    },
    end: (chunk: unknown, encoding: unknown) => {
      take(chunk, encoding);
      made();
      void finish().catch(() => response.destroy());
      return response;
    },
  });
}
