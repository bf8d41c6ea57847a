const DAY = 86_400_000;
const TWO = Array.from({ length: 60 }, (_, number) => String(number).padStart(2, '0'));

/** Texts that are kept, in seconds: what is written of one time is mostly written together. */
const KEPT = 4096;

/** Writes times as a server takes them, for rows by the million: the date is worked out once for a day. */
export class TimeTexts {
  readonly #keptAt = new Float64Array(KEPT).fill(Number.NaN);
  readonly #kept: string[] = new Array<string>(KEPT).fill('');
  #day = Number.NaN;
  #date = '';

  of(ms: number): string {
    const place = Math.floor(ms / 1000) & (KEPT - 1);
    if (this.#keptAt[place] === ms) return this.#kept[place] ?? '';
    const text = this.#write(ms);
    this.#keptAt[place] = ms;
    this.#kept[place] = text;
    return text;
  }

  #write(ms: number): string {
    const day = Math.floor(ms / DAY);
    if (day !== this.#day) {
      this.#day = day;
      this.#date = new Date(day * DAY).toISOString().slice(0, -'00:00:00.000Z'.length);
    }
    const rest = ms - day * DAY;
    const hour = TWO[Math.floor(rest / 3_600_000)] ?? '';
    const minute = TWO[Math.floor(rest / 60_000) % 60] ?? '';
    const second = TWO[Math.floor(rest / 1000) % 60] ?? '';
    const milli = rest % 1000;
    const fraction = milli === 0 ? '000' : String(milli).padStart(3, '0');
    return `${this.#date}${hour}:${minute}:${second}.${fraction}+00:00`;
  }
}
