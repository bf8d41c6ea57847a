import { writeText } from '@/lib/measure/file/escape';

/** A cell: text is made safe for a spreadsheet, a number is written with all its digits, what is absent stays empty. */
export type CsvCell = string | number | null;

/** Figures as a file to keep: RFC 4180, UTF-8, comma, CRLF. */
export function csvFile(
  name: string,
  head: readonly string[],
  rows: readonly (readonly CsvCell[])[],
): Response {
  const lines = [head, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`);
  return new Response(lines.join(''), {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8',
      'Content-Disposition': `attachment; filename="${name.replaceAll(/[^A-Za-z0-9-]+/g, '-')}.csv"`,
      'Cache-Control': 'no-store',
    },
  });
}

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  const text = typeof cell === 'number' ? String(cell) : writeText(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
