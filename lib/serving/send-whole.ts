import type { IncomingMessage, OutgoingHttpHeader, OutgoingHttpHeaders, ServerResponse } from 'node:http';
import { bytesOf } from './bytes-of';
import { packed, type PagePart } from './page-part';
import { partsOfPage } from './parts-of-page';

const wholes = new WeakMap<ServerResponse, readonly PagePart[]>();

/** The body of an answer that was sent as a whole, before it was packed. */
export const wholeOf = (response: ServerResponse): readonly PagePart[] | undefined => wholes.get(response);

/**
 * Has a page sent, and packed, once it is whole. The framework hands over a page in a dozen parts of the same
 * millisecond, and would pack and send each by itself.
 * @param made is told once the page is whole, before it is packed and sent
 * @returns a list for the pieces of markup that belong where the page has a place for them (`pieceInPlace`); null where
 *   they must stand on the page from the start, since it is sent as it comes
 */
export function sendWhole(
  request: IncomingMessage,
  response: ServerResponse,
  made: () => void = () => undefined,
): string[] | null {
  if (request.method !== 'GET' || !/\bgzip\b/.test(request.headers['accept-encoding'] ?? '')) return null;
  // The framework need not pack what is packed here.
  delete request.headers['accept-encoding'];
  const own = {
    write: response.write.bind(response),
    end: response.end.bind(response),
    writeHead: response.writeHead.bind(response),
    flushHeaders: response.flushHeaders.bind(response),
  };
  const chunks: Buffer[] = [];
  const pieces: string[] = [];

  const take = (chunk: unknown, encoding: unknown) => {
    const bytes = bytesOf(chunk, encoding);
    if (bytes !== null) chunks.push(bytes);
  };
  const finish = () => {
    const page = Buffer.concat(chunks);
    Object.assign(response, own);
    if (page.length === 0 || response.hasHeader('content-encoding')) {
      response.end(page);
      return;
    }
    const parts = partsOfPage(page, pieces);
    wholes.set(response, parts);
    const body = packed(parts);
    response.setHeader('Content-Encoding', 'gzip');
    response.setHeader('Content-Length', body.length);
    response.end(body);
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
      return true;
    },
    end: (chunk: unknown, encoding: unknown) => {
      take(chunk, encoding);
      made();
      try {
        finish();
      } catch {
        response.destroy();
      }
      return response;
    },
  });
  return pieces;
}
