const QUOTE = 34;
const RETURN = 13;

/** Where the fields of one line stand in a text. Quotes around a field are left out of it. */
export class PlainLine {
  text = '';
  count = 0;
  /** Fields without their quotes, and with them. */
  readonly from: number[] = [];
  readonly to: number[] = [];
  readonly outerFrom: number[] = [];
  readonly outerTo: number[] = [];

  constructor(private readonly separator: number) {}

  /**
   * Splits `text` from `start` to `end` where it is plain: no quotes but around a whole field that holds none, no line
   * ends. @returns false for any other line, which the CSV library is to read.
   */
  split(text: string, start: number, end: number): boolean {
    this.text = text;
    let field = 0;
    let at = start;
    for (;;) {
      const begin = at;
      let code = at < end ? text.charCodeAt(at) : this.separator;
      if (code === QUOTE) {
        const close = text.indexOf('"', at + 1);
        if (close < 0 || close >= end) return false;
        this.from[field] = at + 1;
        this.to[field] = close;
        for (let k = at + 1; k < close; k++) if (text.charCodeAt(k) === RETURN) return false;
        at = close + 1;
        if (at < end && text.charCodeAt(at) !== this.separator) return false;
      } else {
        while (at < end && code !== this.separator) {
          if (code === QUOTE || code === RETURN) return false;
          code = text.charCodeAt(++at);
        }
        this.from[field] = begin;
        this.to[field] = at;
      }
      this.outerFrom[field] = begin;
      this.outerTo[field] = at;
      field++;
      if (at >= end) break;
      at++;
    }
    this.count = field;
    return true;
  }

  field(index: number): string {
    return this.text.slice(this.from[index], this.to[index]);
  }

  fields(): string[] {
    return Array.from({ length: this.count }, (_, index) => this.field(index));
  }
}
