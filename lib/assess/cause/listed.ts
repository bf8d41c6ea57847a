import { Unlisted } from './unlisted';

/** Explanations one setup further, not yet worked out: where each comes from, and which hypothesis it adds. */
export interface Candidates {
  count: number;
  from: Int32Array;
  /** Place of the body, and row of the pair's columns. */
  place: Int16Array;
  row: Int16Array;
  logWeight: Float64Array;
  /** Number of the kind (`nextKind`). */
  kind: Int32Array;
  best: number;
  /** ln of a bound on the summed weight of the hypotheses that were not listed. */
  logUnlisted: number;
}

/** More than nearly all rounds need: what was compiled for these arrays is thrown away where they are replaced. */
const ROOM = 1 << 15;

/** Room for candidates, used again for every setup. */
export class Listed implements Candidates {
  count = 0;
  from = new Int32Array(ROOM);
  place = new Int16Array(ROOM);
  row = new Int16Array(ROOM);
  logWeight = new Float64Array(ROOM);
  kind = new Int32Array(ROOM);
  best = -Infinity;
  logUnlisted = -Infinity;
  readonly unlisted = new Unlisted();

  begin(reference: number): void {
    this.count = 0;
    this.best = -Infinity;
    this.unlisted.begin(reference);
  }

  add(from: number, place: number, row: number, logWeight: number): void {
    const at = this.count;
    if (at === this.from.length) this.#widen();
    this.from[at] = from;
    this.place[at] = place;
    this.row[at] = row;
    this.logWeight[at] = logWeight;
    this.count = at + 1;
    if (logWeight > this.best) this.best = logWeight;
  }

  #widen(): void {
    const wider = <T extends Int16Array | Int32Array | Float64Array>(old: T, fresh: T): T => (
      fresh.set(old),
      fresh
    );
    this.from = wider(this.from, new Int32Array(2 * this.count));
    this.place = wider(this.place, new Int16Array(2 * this.count));
    this.row = wider(this.row, new Int16Array(2 * this.count));
    this.logWeight = wider(this.logWeight, new Float64Array(2 * this.count));
    this.kind = wider(this.kind, new Int32Array(2 * this.count));
  }
}
