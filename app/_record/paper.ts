import type { Fonts } from './fonts';
import { linesOf, type Line, type Piece } from './lines';

/** A4 in points, with room at the left for a binder. */
export const PAGE = { width: 595.28, height: 841.89, left: 56, right: 48, top: 52, bottom: 66 } as const;

export const WIDTH = PAGE.width - PAGE.left - PAGE.right;

export const INK = { text: '#1b2224', soft: '#50595c', line: '#7b7f7b', faint: '#d9d7d0' } as const;

/** Of the text, in points; a line is this many times as high. */
export const SIZE = {
  title: 20,
  heading: 13.5,
  minor: 11,
  text: 10,
  table: 8.5,
  aside: 8.5,
  foot: 8,
} as const;
export const LEADING = 1.32;

export const lineHeight = (size: number): number => size * LEADING;

/** The page that is being filled, from top to bottom, and the structure that readers by ear are given. */
export interface Paper {
  pdf: PDFKit.PDFDocument;
  fonts: Fonts;
  /** The document as its structure knows it. */
  root: PDFKit.PDFStructureElement;
  /** How far down the page it is filled, points. */
  y: number;
  /** Of the document. */
  language: string;
  /** What found no room and stands at the head of the next page. */
  waiting: (() => void)[];
}

export const room = (paper: Paper): number => PAGE.height - PAGE.bottom - paper.y;

/** A new page unless so many points are left. */
export function wantRoom(paper: Paper, points: number): void {
  if (room(paper) < points && paper.y > PAGE.top) newPage(paper);
}

export function newPage(paper: Paper): void {
  paper.pdf.addPage();
  paper.y = PAGE.top;
  for (const draw of paper.waiting.splice(0)) draw();
}

/** Which cells a head is of, beside what the library takes: across how many columns it stands. */
interface Attributes extends PDFKit.Mixins.StructureElementOptions {
  scope?: 'Column' | 'Row';
  columns?: number;
}

/** An element of the structure under another, or under the document. */
export function element(
  paper: Paper,
  type: string,
  { scope, columns = 1, ...options }: Attributes = {},
  parent: PDFKit.PDFStructureElement = paper.root,
): PDFKit.PDFStructureElement {
  const made = paper.pdf.struct(type, options);
  if (scope !== undefined)
    // The published types leave the dictionary out, and the library's own option knows no column span.
    (made as unknown as { dictionary: { data: Record<string, unknown> } }).dictionary.data.A = {
      O: 'Table',
      Scope: scope,
      ...(columns > 1 && { ColSpan: columns }),
    };
  parent.add(made);
  return made;
}

/** Draws what belongs to an element of the structure. */
export function within(paper: Paper, of: PDFKit.PDFStructureElement, type: string, draw: () => void): void {
  of.add(paper.pdf.markStructureContent(type));
  draw();
  paper.pdf.endMarkedContent();
}

/** Draws what says nothing by itself: rules, frames, what stands on every page. */
export function aside(paper: Paper, draw: () => void, type?: 'Pagination'): void {
  paper.pdf.markContent('Artifact', type === undefined ? { type: 'Layout' } : { type });
  draw();
  paper.pdf.endMarkedContent();
}

/** Writes one line with its top at `y`. */
export function write(
  paper: Paper,
  line: Line,
  x: number,
  y: number,
  size: number,
  ink: string = INK.text,
): void {
  let at = x;
  for (const { font, text, width } of line.runs) {
    paper.pdf.font(font).fontSize(size).fillColor(ink).text(text, at, y, { lineBreak: false });
    at += width;
  }
}

export const broken = (paper: Paper, pieces: readonly Piece[], width: number, size: number): Line[] =>
  linesOf(pieces, width, size, paper.fonts);

export function rule(
  paper: Paper,
  from: number,
  to: number,
  y: number,
  ink: string = INK.line,
  width = 0.6,
): void {
  paper.pdf.moveTo(from, y).lineTo(to, y).lineWidth(width).strokeColor(ink).stroke();
}
