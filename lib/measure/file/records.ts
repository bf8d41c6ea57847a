import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { parse, type Parser } from 'csv-parse';
import { MAX_LINE } from './limits';
import { Refusal } from './refusal';
import { separatorOf, type Separator } from './separator';

/** Called for every line that is not blank; `line` is where it begins, since a quoted field may hold line ends. */
export type OnRecord = (line: number, fields: readonly string[], separator: Separator) => void;

/** How much of a file is looked at to find its header line, bytes. */
const HEAD = 1 << 16;

/** Splits CSV (RFC 4180) into records: quotes, CRLF, LF or CR, a byte order mark, blanks around fields. */
export async function readRecords(chunks: AsyncGenerator<Buffer, void>, onRecord: OnRecord): Promise<void> {
  const { head, ended } = await readHead(chunks);
  const separator = separatorOf(firstLine(head));
  const lines = { next: 1 };
  const parser = recordParser(separator, lines, onRecord);
  parser.resume();
  const all = async function* () {
    yield head;
    if (!ended) yield* chunks;
  };
  try {
    await pipeline(Readable.from(all()), parser);
  } catch (error) {
    throw error instanceof Refusal ? error : unreadable(error, lines.next);
  }
}

function recordParser(separator: Separator, lines: { next: number }, onRecord: OnRecord): Parser {
  return parse({
    delimiter: separator,
    bom: true,
    trim: true,
    relax_quotes: true,
    relax_column_count: true,
    max_record_size: MAX_LINE,
    record_delimiter: ['\r\n', '\n', '\r'],
    on_record: (fields: string[], context) => {
      const line = lines.next;
      lines.next = context.lines + 1;
      if (fields.some((field) => field.trim() !== '')) onRecord(line, fields, separator);
      return null;
    },
  });
}

async function readHead(chunks: AsyncGenerator<Buffer, void>): Promise<{ head: Buffer; ended: boolean }> {
  let head: Buffer = Buffer.alloc(0);
  while (head.length < HEAD && firstLineEnd(head) < 0) {
    const next = await chunks.next();
    if (next.done === true) return { head, ended: true };
    head = Buffer.concat([head, next.value]);
  }
  return { head, ended: false };
}

/** Where the first line that is not blank ends; −1 where it does not end yet. */
function firstLineEnd(head: Buffer): number {
  const match = /^[\s\ufeff]*[^\s\ufeff][^\r\n]*[\r\n]/.exec(head.subarray(0, HEAD).toString('utf8'));
  return match === null ? -1 : match[0].length;
}

function firstLine(head: Buffer): string {
  const text = head.subarray(0, HEAD).toString('utf8');
  return text.split(/[\r\n]+/).find((line) => line.replace('\ufeff', '').trim() !== '') ?? '';
}

const hasCode = (error: unknown): error is { code: string } =>
  typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string';

function unreadable(error: unknown, line: number): unknown {
  if (!hasCode(error) || !error.code.startsWith('CSV_')) return error;
  if (error.code === 'CSV_QUOTE_NOT_CLOSED' || error.code === 'CSV_MAX_RECORD_SIZE') {
    const message =
      'A double quote is opened on this line and never closed. Close it, or write two for a quote within a text.';
    return new Refusal(message, line);
  }
  return new Refusal('The line cannot be split into fields. Check its quotes and separators.', line);
}
