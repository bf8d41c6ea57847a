/** Another in each process: nobody can write a file whose texts all have the same hash. */
const BASIS = Math.floor(Math.random() * 2 ** 32);
const PRIME = 0x01000193;

/** Numbers by texts that stand among bytes, which are looked up without being made into strings. */
export class ByteKeys {
  size = 0;
  /** All texts, one after the other. */
  #texts = new Uint8Array(1 << 12);
  #end = 0;
  /** By the order in which they were learned: where a text begins, its hash, and its number. One more beginning than texts. */
  #begins = new Int32Array(1 << 8);
  #hashes = new Int32Array(1 << 8);
  #numbers = new Int32Array(1 << 8);
  /** Places by hash: one more than a text's, or 0. Never more than half are taken. */
  #places = new Int32Array(1 << 9);
  /** The text that was found last, and which was found after each: lines that stand together have much in common. */
  #last = 0;
  #after = new Int32Array(1 << 8);

  /** The number of the text that stands from `from` to `to`; −1 where it was never learned. */
  find(bytes: Uint8Array, from: number, to: number): number {
    if (this.size === 0) return -1;
    if (this.#is(this.#last, bytes, from, to)) return this.#numbers[this.#last] ?? -1;
    const next = this.#after[this.#last] ?? 0;
    if (this.#is(next, bytes, from, to)) return this.#found(next);
    const hash = hashOf(bytes, from, to);
    const mask = this.#places.length - 1;
    for (let place = hash & mask; ; place = (place + 1) & mask) {
      const at = (this.#places[place] ?? 0) - 1;
      if (at < 0) return -1;
      if (this.#hashes[at] !== hash || !this.#is(at, bytes, from, to)) continue;
      return this.#found(at);
    }
  }

  /** Keeps a copy of a text that was not found. */
  learn(bytes: Uint8Array, from: number, to: number, number: number): void {
    const at = this.size++;
    if (at + 2 > this.#begins.length) this.#growList();
    const end = this.#end + to - from;
    if (end > this.#texts.length) this.#texts = grown(this.#texts, new Uint8Array(2 * end));
    this.#texts.set(bytes.subarray(from, to), this.#end);
    this.#end = end;
    this.#begins[at + 1] = end;
    this.#hashes[at] = hashOf(bytes, from, to);
    this.#numbers[at] = number;
    if (2 * this.size > this.#places.length) this.#growPlaces();
    else this.#place(at);
  }

  #is(at: number, bytes: Uint8Array, from: number, to: number): boolean {
    const texts = this.#texts;
    let k = this.#begins[at] ?? 0;
    if ((this.#begins[at + 1] ?? 0) - k !== to - from) return false;
    for (let byte = from; byte < to; byte++) if (bytes[byte] !== texts[k++]) return false;
    return true;
  }

  #found(at: number): number {
    this.#after[this.#last] = at;
    this.#last = at;
    return this.#numbers[at] ?? -1;
  }

  #place(at: number): void {
    const mask = this.#places.length - 1;
    let place = (this.#hashes[at] ?? 0) & mask;
    while (this.#places[place] !== 0) place = (place + 1) & mask;
    this.#places[place] = at + 1;
  }

  #growList(): void {
    const size = 2 * this.#begins.length;
    this.#begins = grown(this.#begins, new Int32Array(size));
    this.#hashes = grown(this.#hashes, new Int32Array(size));
    this.#numbers = grown(this.#numbers, new Int32Array(size));
    this.#after = grown(this.#after, new Int32Array(size));
  }

  #growPlaces(): void {
    this.#places = new Int32Array(2 * this.#places.length);
    for (let at = 0; at < this.size; at++) this.#place(at);
  }
}

function grown<Numbers extends Int32Array | Uint8Array>(from: Numbers, to: Numbers): Numbers {
  to.set(from);
  return to;
}

/** FNV-1a but for its basis, stirred once more at its end: only the last bits of it are looked at. */
function hashOf(bytes: Uint8Array, from: number, to: number): number {
  let hash = BASIS;
  for (let at = from; at < to; at++) hash = Math.imul(hash ^ (bytes[at] ?? 0), PRIME);
  return hash ^ (hash >>> 15);
}
