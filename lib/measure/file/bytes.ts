import { isUtf8 } from 'node:buffer';
import { MAX_BLANK_LINES, MAX_FILE_BYTES, MAX_LINES } from './limits';
import type { FileSource } from './options';
import { Refusal } from './refusal';

/** Counts what went by, for the summary. */
export interface ByteCount {
  bytes: number;
}

/**
 * Passes the bytes of a file on, in chunks that end between characters, and refuses what cannot be a measurement
 * file: too large, binary, or not UTF-8.
 */
export async function* textBytes(source: FileSource, count: ByteCount): AsyncGenerator<Buffer, void> {
  let rest: Buffer = Buffer.alloc(0);
  let lines = 0;
  let blank = 0;
  for await (const piece of chunksOf(source)) {
    const isFirst = count.bytes === 0;
    count.bytes += piece.length;
    refuseTooLarge(count.bytes);
    const whole = rest.length === 0 ? piece : Buffer.concat([rest, piece]);
    if (isFirst) refuseOtherFormats(whole);
    const end = characterEnd(whole);
    const chunk = whole.subarray(0, end);
    rest = whole.subarray(end);
    refuseUnreadable(chunk, lines);
    const found = newlines(chunk);
    lines += found.lines;
    blank += found.blank;
    refuseTooManyLines(lines, blank);
    yield chunk;
  }
  refuseUnreadable(rest, lines);
  if (rest.length > 0) yield rest;
}

async function* chunksOf(source: FileSource): AsyncGenerator<Buffer> {
  if (typeof source === 'string' || source instanceof Uint8Array) {
    const all = typeof source === 'string' ? Buffer.from(source) : asBuffer(source);
    for (let from = 0; from < all.length; from += 1 << 16) yield all.subarray(from, from + (1 << 16));
    return;
  }
  for await (const chunk of source) if (chunk.length > 0) yield asBuffer(chunk);
}

const asBuffer = (bytes: Uint8Array) => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);

export function refuseTooLarge(bytes: number): void {
  if (bytes <= MAX_FILE_BYTES) return;
  const most = MAX_FILE_BYTES / 1_000_000;
  throw new Refusal(`The file is larger than ${most} MB, the most that is read at once. Split it by date.`);
}

function refuseTooManyLines(lines: number, blank: number): void {
  const mend = 'Remove what holds no reading, or split the file by date.';
  if (lines > MAX_LINES)
    throw new Refusal(`The file has more than ${MAX_LINES / 1_000_000} million lines. ${mend}`);
  if (blank > MAX_BLANK_LINES)
    throw new Refusal(`The file has more than ${MAX_BLANK_LINES / 1000} thousand blank lines. ${mend}`);
}

function refuseOtherFormats(start: Buffer): void {
  const head = start.subarray(0, 4).toString('latin1');
  if (head.startsWith('PK')) {
    throw new Refusal(
      'This is a spreadsheet workbook or a ZIP archive. Save the sheet as "CSV UTF-8" and load that.',
    );
  }
  if (head.startsWith('\xff\xfe') || head.startsWith('\xfe\xff')) {
    throw new Refusal('The file is UTF-16. Save it as "CSV UTF-8" and load that.');
  }
  if (head === '%PDF') throw new Refusal('This is a PDF. Load the measurements as "CSV UTF-8".');
}

function refuseUnreadable(chunk: Buffer, linesBefore: number): void {
  const zero = chunk.indexOf(0);
  if (zero >= 0) {
    const line = linesBefore + 1 + newlines(chunk.subarray(0, zero)).lines;
    throw new Refusal(
      'The file is binary, not text. Save the measurements as "CSV UTF-8" and load that.',
      line,
    );
  }
  if (isUtf8(chunk)) return;
  const lines = splitLines(chunk);
  const bad = lines.findIndex((line) => !isUtf8(line));
  const text = (lines[bad] ?? chunk).toString('latin1').slice(0, 80);
  const message =
    'The file is not UTF-8: a character in this line cannot be read. Save it as "CSV UTF-8" and load that.';
  throw new Refusal(message, linesBefore + 1 + Math.max(0, bad), text);
}

function splitLines(chunk: Buffer): Buffer[] {
  const lines: Buffer[] = [];
  let from = 0;
  for (let to = chunk.indexOf(10); to >= 0; to = chunk.indexOf(10, from)) {
    lines.push(chunk.subarray(from, to));
    from = to + 1;
  }
  return [...lines, chunk.subarray(from)];
}

/** Ends of lines, and how many of these lines hold nothing; of one at the edge of a chunk that may be missed. */
function newlines(chunk: Buffer): { lines: number; blank: number } {
  let [lines, blank] = [0, 0];
  let before = -1;
  for (let at = chunk.indexOf(10); at >= 0; at = chunk.indexOf(10, at + 1)) {
    lines++;
    if (at === before + 1 || (at === before + 2 && chunk[at - 1] === 13)) blank++;
    before = at;
  }
  return { lines, blank };
}

/** Index after the last whole UTF-8 character (RFC 3629: the first byte says how many follow). */
function characterEnd(chunk: Buffer): number {
  for (let back = 1; back <= Math.min(4, chunk.length); back++) {
    const byte = chunk[chunk.length - back] ?? 0;
    if (byte < 0x80) return chunk.length;
    if (byte >= 0xc0) {
      const length = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2;
      return length > back ? chunk.length - back : chunk.length;
    }
  }
  return chunk.length;
}
