import { Readable } from 'node:stream';
import type { PrintedDocument } from './document';
import { pdfOf } from './pdf-of';

/** The answer that hands out a document as `<name>.pdf`, page by page as it is made. */
export function pdfAnswer(name: string, printed: PrintedDocument): Response {
  return new Response(Readable.toWeb(new Readable().wrap(pdfOf(printed))) as ReadableStream<Uint8Array>, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="${plain(name)}.pdf"`,
      'Cache-Control': 'no-store',
    },
  });
}

/** A name that is safe in a header and in every file system. */
const plain = (name: string): string => name.replaceAll(/[^A-Za-z0-9-]+/g, '-');
