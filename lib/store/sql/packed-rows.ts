import type { RowCell } from './rows';

const BEGINNING = Buffer.from('PGCOPY\n\xff\r\n\0\0\0\0\0\0\0\0\0', 'latin1');
/** In place of the number of a row's columns, where there are no more rows. */
const NO_ROW = -1;
/** In place of the length of a cell. */
const NO_VALUE = -1;

/** PostgreSQL counts a time in microseconds from the year 2000 on. */
const YEAR_2000_MS = Date.UTC(2000, 0, 1);
const HALF = 2 ** 32;

/** Bytes of a cell but for the text in it: its length, and a number of eight at most. */
const CELL = 12;

/**
 * Rows in the binary form of PostgreSQL's COPY: neither side writes a number or a time out for the other to read it again,
 * and nothing is made of a cell here that would have to be cleared away.
 */
export class PackedRows {
  #bytes = Buffer.allocUnsafe(BEGINNING.length);
  #view = viewOf(this.#bytes);
  #at = 0;

  /** @param types of the columns, as `format_type` names them. */
  constructor(private readonly types: readonly string[]) {}

  /**
   * @param cells rows one after another, as many cells as `count`; times in epoch ms.
   * @returns bytes that are good until the next are asked for.
   * @throws RangeError where a cell does not suit its column.
   */
  of(cells: readonly RowCell[], count: number): Uint8Array {
    const { types } = this;
    this.#at = BEGINNING.copy(this.#bytes);
    for (let from = 0; from < count; from += types.length) {
      this.#row(types.length);
      for (const [column, type] of types.entries()) this.#cell(type, cells[from + column] ?? null);
    }
    return this.#end();
  }

  #row(columns: number): void {
    this.#need(2);
    this.#view.setInt16(this.#at, columns);
    this.#at += 2;
  }

  #cell(type: string, cell: RowCell): void {
    this.#need(CELL);
    if (cell === null) this.#integer(NO_VALUE);
    else if (type === 'text' && typeof cell === 'string') this.#text(cell);
    else if (type === 'boolean' && typeof cell === 'boolean') this.#truth(cell);
    else if (type === 'integer' && typeof cell === 'number' && (cell | 0) === cell) {
      this.#integer(4);
      this.#integer(cell);
    } else if (type === 'double precision' && Number.isFinite(cell)) this.#double(Number(cell));
    else if (type === 'timestamp without time zone' && Number.isInteger(cell)) this.#time(Number(cell));
    else throw new RangeError(`${cell} is not to be stored as ${type}.`);
  }

  #end(): Uint8Array {
    this.#need(2);
    this.#view.setInt16(this.#at, NO_ROW);
    return this.#bytes.subarray(0, this.#at + 2);
  }

  #integer(value: number): void {
    this.#view.setInt32(this.#at, value);
    this.#at += 4;
  }

  #double(value: number): void {
    this.#integer(8);
    this.#view.setFloat64(this.#at, value);
    this.#at += 8;
  }

  #time(ms: number): void {
    const microseconds = (ms - YEAR_2000_MS) * 1000;
    this.#integer(8);
    this.#integer(Math.floor(microseconds / HALF));
    // What is above the lower half is left out by itself.
    this.#integer(microseconds);
  }

  #truth(is: boolean): void {
    this.#integer(1);
    this.#view.setUint8(this.#at++, is ? 1 : 0);
  }

  #text(text: string): void {
    // A unit of the text takes three bytes at most.
    this.#need(4 + text.length * 3);
    const bytes = this.#bytes.write(text, this.#at + 4);
    this.#integer(bytes);
    this.#at += bytes;
  }

  #need(room: number): void {
    if (this.#at + room <= this.#bytes.length) return;
    const larger = Buffer.allocUnsafe((this.#bytes.length + room) * 2);
    this.#bytes.copy(larger, 0, 0, this.#at);
    this.#bytes = larger;
    this.#view = viewOf(larger);
  }
}

/** Numbers of more than one byte travel with their first byte first, as `DataView` writes them. */
const viewOf = (bytes: Buffer) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
