import type { Drawing } from '@/app/_figures/drawing/drawing';

/**
 * A document to be printed, as plain data: what stands on it and in what order, never where. `pdfOf` lays it out, so
 * whoever fills one in thinks of words and numbers alone.
 */
export interface PrintedDocument {
  /** In the file's properties, in the viewer's window, and on top of the first page. */
  title: string;
  /** Above the title, small: whose document it is. */
  above: string;
  /** Of the document, `en-GB`; a block in another language says so itself. */
  language: string;
  /** When it is made, epoch milliseconds. */
  at: number;
  /** At the foot of every page, left. */
  foot: string;
  /** At the foot of every page, right: `Page 2 of 5`. */
  pageOf: (page: number, pages: number) => string;
  blocks: readonly Block[];
}

export type Block =
  | { kind: 'heading'; level: 2 | 3; text: string }
  | Paragraph
  /** Names with what they stand for, side by side. */
  | { kind: 'facts'; facts: readonly { name: string; value: string }[] }
  | { kind: 'list'; items: readonly ListItem[] }
  | PrintedTable
  /** What must not be overlooked, in a frame. */
  | { kind: 'caution'; title: string; text: string }
  /** Where it finds no room on a page, the text goes on and it stands at the head of the next. */
  | { kind: 'drawing'; drawing: Drawing; caption: string }
  /** Who answers for it: what is signed, and lines with the name of each below it, all on one page. */
  | { kind: 'signing'; title: string; text: string; names: readonly string[] };

export interface Paragraph {
  kind: 'paragraph';
  /** In bold before the text. */
  lead?: string;
  text: string;
  /** Smaller and lighter: how a figure is read. */
  aside?: boolean;
  /** Where it is not the document's. */
  language?: string;
}

export interface ListItem {
  lead?: string;
  text: string;
  language?: string;
}

export interface PrintedTable {
  kind: 'table';
  caption: string;
  /** Heads that span several columns, in a row above the others: as many columns in all as there are. */
  groups?: readonly { head: string; columns: number }[];
  columns: readonly PrintedColumn[];
  rows: readonly PrintedRow[];
  /** Instead of the table where it has no row. */
  empty?: string;
}

export interface PrintedColumn {
  head: string;
  /** Share of the width, beside those of the others. */
  width: number;
  numeric?: boolean;
}

/** The cells of a row, the first of which names it; or a line across, over the rows that it names. */
export type PrintedRow =
  { cells: readonly PrintedCell[]; strong?: boolean; tall?: boolean } | { band: string };

export type PrintedCell = string | { text: string; strong?: boolean };
