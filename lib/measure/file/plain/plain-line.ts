const QUOTE = 34;
const RETURN = 13;
const NEWLINE = 10;

/** Where the fields of one line stand among bytes of UTF-8. Quotes around a field are left out of it. */
export class PlainLine {
  bytes: Uint8Array = new Uint8Array(0);
  count = 0;
  /** Bytes of the line, and where the next one begins. */
  length = 0;
  next = 0;
  /** Fields without their quotes, and with them. */
  readonly from: number[] = [];
  readonly to: number[] = [];
  readonly outerFrom: number[] = [];
  readonly outerTo: number[] = [];

  constructor(private readonly separator: number) {}

  /**
   * Splits the line of `bytes` that begins at `start`, and ends before `end` at the latest, where it is plain: no quotes
   * but around a whole field that holds none, no returns but before its end.
   * @returns false for any other line, which the CSV library is to read.
   */
  split(bytes: Uint8Array, start: number, end: number): boolean {
    this.bytes = bytes;
    const { separator, from, to, outerFrom, outerTo } = this;
    let field = 0;
    let at = start;
    for (;;) {
      outerFrom[field] = at;
      let code = at < end ? bytes[at] : NEWLINE;
      if (code === QUOTE) {
        from[field] = ++at;
        while (at < end && bytes[at] !== QUOTE) {
          if (bytes[at] === RETURN || bytes[at] === NEWLINE) return false;
          at++;
        }
        if (at >= end) return false;
        to[field] = at++;
        code = at < end ? bytes[at] : NEWLINE;
        if (code !== separator && code !== NEWLINE && code !== RETURN) return false;
      } else {
        from[field] = at;
        while (code !== separator && code !== NEWLINE && code !== RETURN) {
          if (code === QUOTE) return false;
          at++;
          code = at < end ? bytes[at] : NEWLINE;
        }
        to[field] = at;
      }
      outerTo[field++] = at;
      if (code === separator) {
        at++;
        continue;
      }
      this.length = at - start;
      if (code === RETURN && !(at + 1 < end && bytes[++at] === NEWLINE)) return false;
      break;
    }
    this.count = field;
    this.next = at + 1;
    return true;
  }

  /** Whether it is longer than so many characters. */
  isLongerThan(most: number): boolean {
    if (this.length <= most) return false;
    const from = this.outerFrom[0] ?? 0;
    return textOf(this.bytes, from, from + this.length).length > most;
  }

  field(index: number): string {
    return textOf(this.bytes, this.from[index] ?? 0, this.to[index] ?? 0);
  }

  fields(): string[] {
    return Array.from({ length: this.count }, (_, index) => this.field(index));
  }
}

const textOf = (bytes: Uint8Array, from: number, to: number): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset + from, to - from).toString();
