/** The sheet file: a sheet as CSV, a public contract that the README states. Needs Node. */
export { MAX_SHEET_BYTES, MAX_SHEET_ROWS, readSheetFile, type SheetFile } from './read';
export { writeSheetFile } from './write';
export { LENGTH_FILE_COLUMNS, POINT_FILE_COLUMNS } from './columns';
