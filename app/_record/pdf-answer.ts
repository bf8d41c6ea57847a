import { Readable } from 'node:stream';
import type { PrintedDocument } from './document';
import { pdfOf } from './pdf-of';

/** The answer that hands out a document as `<name>.pdf`, page by page as it is made. */
export function pdfAnswer(name: string, printed: PrintedDocument): Response {
  // As an iterable: a stream wrapped around another closes with it, before a slow reader has all of it.
  const pages = Readable.from(pdfOf(printed));
  return new Response(Readable.toWeb(pages) as ReadableStream<Uint8Array>, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="${plain(name)}.pdf"`,
      'Cache-Control': 'no-store',
    },
  });
}

/** A name that is safe in a header and in every file system. */
const plain = (name: string): string => name.replaceAll(/[^A-Za-z0-9-]+/g, '-');
