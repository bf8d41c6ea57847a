/** What the shop prints: documents as plain data, laid out as PDF. */
export type {
  Block,
  ListItem,
  Paragraph,
  PrintedCell,
  PrintedColumn,
  PrintedDocument,
  PrintedRow,
  PrintedTable,
} from './document';
export { pdfAnswer } from './pdf-answer';
export { pdfOf } from './pdf-of';
