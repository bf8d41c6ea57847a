import PDFParser from 'pdf2json';
import { z } from 'zod';

/** What the reader of PDFs tells of a page: pieces of text with their places, in the order they were written. */
const told = z.object({
  Meta: z.object({ Title: z.string().optional() }),
  Pages: z.array(
    z.object({
      Texts: z.array(z.object({ y: z.number(), R: z.array(z.object({ T: z.string() })) })),
    }),
  ),
});

/** How much the reader says on its own: no warnings of what it does not draw. */
const ERRORS_ONLY = 0;

export interface PdfText {
  title: string | undefined;
  /** The text of each page, a line break where the next piece stands on another line. */
  pages: string[];
}

/** Reads the text of a PDF back, as somebody would who takes it out by a program. */
export function readPdf(bytes: Buffer): Promise<PdfText> {
  return new Promise((resolve, reject) => {
    const parser = new PDFParser();
    parser.on('pdfParser_dataError', (error) =>
      reject(error instanceof Error ? error : new Error('The PDF could not be read.')),
    );
    parser.on('pdfParser_dataReady', (data) => {
      const { Meta, Pages } = told.parse(data);
      resolve({ title: Meta.Title, pages: Pages.map(({ Texts }) => textOf(Texts)) });
    });
    parser.parseBuffer(bytes, ERRORS_ONLY);
  });
}

function textOf(pieces: { y: number; R: { T: string }[] }[]): string {
  let text = '';
  let y: number | null = null;
  for (const piece of pieces) {
    if (y !== null) text += Math.abs(piece.y - y) > 0.05 ? '\n' : ' ';
    text += piece.R.map(({ T }) => decoded(T)).join('');
    y = piece.y;
  }
  return text.replaceAll('\u00a0', ' ');
}

/** Some releases give the text escaped as in an address. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** With lines joined and blanks made one, so that a sentence is found however it was broken. */
export const running = (pages: readonly string[]): string => pages.join(' ').replaceAll(/\s+/g, ' ');
