import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { parse, type Parser } from 'csv-parse';
import { MAX_LINE } from './limits';
import { PlainLine } from './plain/plain-line';
import { Refusal } from './refusal';
import { separatorOf, type Separator } from './separator';

/** What is done with the lines of a file that are not blank. `line` is where one begins, since a quoted field may hold line ends. */
export interface OnRecord {
  /** Offered each line that needs no CSV library; false where it is to come as a record. */
  plain(line: number, fields: PlainLine): boolean;
  /** `fields` of the same line as it was offered, where it was. */
  record(line: number, fields: readonly string[], separator: Separator, plain: PlainLine | null): void;
}

/** The byte order mark. */
const MARK = Buffer.from('\ufeff');

/** How much of a file is looked at to find its header line, bytes. */
const HEAD = 1 << 16;

/**
 * Splits CSV (RFC 4180) into records: quotes, CRLF, LF or CR, a byte order mark, blanks around fields. Lines are split
 * here as long as they are plain; from the first one that is not, the CSV library reads.
 */
export async function readRecords(chunks: AsyncGenerator<Buffer, void>, on: OnRecord): Promise<void> {
  const { head, ended } = await readHead(chunks);
  const separator = separatorOf(firstLine(head));
  const plain = new PlainText(separator, on);
  let left = plain.take(head);
  while (left === null && !ended) {
    const next = await chunks.next();
    if (next.done === true) break;
    left = plain.take(next.value);
  }
  left ??= plain.end();
  if (left === null) return;
  await readByLibrary(left, chunks, separator, plain.lines, on);
}

async function readByLibrary(
  left: Buffer,
  chunks: AsyncGenerator<Buffer, void>,
  separator: Separator,
  before: number,
  on: OnRecord,
): Promise<void> {
  const lines = { next: before + 1 };
  const parser = recordParser(separator, before, lines, on);
  parser.resume();
  const all = async function* () {
    yield left;
    yield* chunks;
  };
  try {
    await pipeline(Readable.from(all()), parser);
  } catch (error) {
    throw error instanceof Refusal ? error : unreadable(error, lines.next);
  }
}

function recordParser(separator: Separator, before: number, lines: { next: number }, on: OnRecord): Parser {
  return parse({
    delimiter: separator,
    bom: before === 0,
    trim: true,
    relax_quotes: true,
    relax_column_count: true,
    max_record_size: MAX_LINE,
    record_delimiter: ['\r\n', '\n', '\r'],
    on_record: (fields: string[], context) => {
      const line = lines.next;
      lines.next = before + context.lines + 1;
      if (!areBlank(fields)) on.record(line, fields, separator, null);
      return null;
    },
  });
}

/** Lines of text as long as they are plain. */
class PlainText {
  /** Lines that were taken. */
  lines = 0;
  private rest: Buffer = Buffer.alloc(0);
  private readonly line: PlainLine;

  constructor(
    private readonly separator: Separator,
    private readonly on: OnRecord,
  ) {
    this.line = new PlainLine(separator.charCodeAt(0));
  }

  /** Takes the whole lines of what has come; null, or what is left for the CSV library to read. */
  take(chunk: Buffer): Buffer | null {
    const bytes = this.rest.length === 0 ? chunk : Buffer.concat([this.rest, chunk]);
    const whole = bytes.lastIndexOf(10) + 1;
    this.rest = bytes.subarray(whole);
    const stopped = this.takeLines(bytes.subarray(0, whole));
    if (stopped !== null) return bytes.subarray(stopped);
    return this.rest.length > MAX_LINE ? this.rest : null;
  }

  /** Takes the last line, which ends with the file. */
  end(): Buffer | null {
    const stopped = this.takeLines(this.rest);
    return stopped === null ? null : this.rest.subarray(stopped);
  }

  /** The place of the first line that is not plain; null where there is none. */
  private takeLines(bytes: Buffer): number | null {
    const { line } = this;
    let at = this.lines === 0 && bytes.indexOf(MARK) === 0 ? MARK.length : 0;
    while (at < bytes.length) {
      if (!line.split(bytes, at, bytes.length) || line.isLongerThan(MAX_LINE)) return at;
      this.lines++;
      if (line.length > 0 && !this.on.plain(this.lines, line)) this.record();
      at = line.next;
    }
    return null;
  }

  private record(): void {
    const fields = this.line.fields();
    if (!areBlank(fields)) this.on.record(this.lines, fields, this.separator, this.line);
  }
}

const areBlank = (fields: readonly string[]) => fields.every((field) => field.trim() === '');

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
