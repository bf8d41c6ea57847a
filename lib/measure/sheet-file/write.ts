import { writeText } from '@/lib/measure/file/escape';
import { typedOf, type SheetRows } from '@/lib/measure/sheet';
import { LENGTH_FILE_COLUMNS, POINT_FILE_COLUMNS } from './columns';

/** A sheet as a file: the points, an empty line, the lengths. CRLF, as spreadsheets expect it. */
export function writeSheetFile(rows: SheetRows): string {
  const { points, lengths } = typedOf(rows, String);
  const number = /^-?\d+(\.\d+)?$/;
  const cell = (text: string) => quoted(number.test(text) ? text : writeText(text));
  const block = <Row>(columns: Record<string, keyof Row>, all: readonly Row[]) => [
    Object.keys(columns).join(','),
    ...all.map((row) =>
      Object.values(columns)
        .map((column) => cell(String(row[column])))
        .join(','),
    ),
  ];
  const lines = [
    ...(points.length > 0 ? block(POINT_FILE_COLUMNS, points) : []),
    ...(points.length > 0 && lengths.length > 0 ? [''] : []),
    ...(lengths.length > 0 ? block(LENGTH_FILE_COLUMNS, lengths) : []),
  ];
  return `${lines.join('\r\n')}\r\n`;
}

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
