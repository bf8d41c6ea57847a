import { dimensionName } from '@/lib/measure/dimension';
import type { Cause, Dimension, GaugeKind, Stage } from '@/lib/measure/types';
import type { Draft } from '../draft';
import { Kinds, Names, Pairs, thing } from './names';

/** What the lines of a round have in common. Numbers are those of the table's names; −1 where no sheet is named. */
export interface Place extends Mark {
  job: number;
  /** One number for job, stage and attempt. */
  round: number;
  /** That of its mark. */
  mark: number;
}

/** What tells the rounds of a job apart. */
interface Mark {
  sheet: number;
  stage: Stage;
  attempt: number;
}

export interface Hand {
  technician: number;
  gauge: number;
  kind: GaugeKind | null;
}

/** What a line says of its dimension; null what it leaves out. */
export interface Stated extends Pick<Dimension, 'quantity' | 'point' | 'side' | 'section' | 'station'> {
  zero: boolean | null;
  nominal: number | null;
  tolerance: number | null;
  /** Number of its name: quantity, point and side. */
  name: number;
}

export interface Aside {
  clearance: number | null;
  cause: Cause | null;
}

/** A line by numbers. */
export interface Cells {
  place: number;
  hand: number;
  setup: number;
  stated: number;
  aside: number;
}

/** Numbers from the first up to, and without, the last. */
interface Numbers {
  first: number;
  end: number;
}

/** Stands for a repeat that is not numbered (yet). */
export const UNNUMBERED = 0;
const FIRST = 1024;

/**
 * The sound lines of a file, some 45 bytes each: what recurs is kept once, and a line holds its numbers. A file of a
 * million readings so takes no more memory than its database's cache.
 */
export class LineTable {
  readonly jobs: Names;
  readonly sheets: Names;
  readonly technicians: Names;
  readonly gauges: Names;
  readonly setups: Names;
  readonly dimensions: Names;
  readonly rounds: Pairs;
  /** Places by their numbers; a number for each of job and mark. */
  readonly places: { all: Place[] };
  private readonly pairs: Pairs;
  private readonly marks: Kinds<Mark & { round: number }>;
  private readonly roundMarks: Names;
  readonly hands: Kinds<Hand>;
  readonly stated: Kinds<Stated>;
  readonly asides: Kinds<Aside>;
  /** Of a part of a file, which numbers its lines have. */
  private within: LineTable['numbers'] | null = null;
  size = 0;
  line = new Int32Array(FIRST);
  placeAt = new Int32Array(FIRST);
  handAt = new Int32Array(FIRST);
  setupAt = new Int32Array(FIRST);
  statedAt = new Int32Array(FIRST);
  asideAt = new Int32Array(FIRST);
  repeat = new Int32Array(FIRST);
  takenAt = new Float64Array(FIRST);
  value = new Float64Array(FIRST);

  /** @param whole the table of which this is to be a part, with the same numbers for all that is named. */
  constructor(whole?: LineTable) {
    this.jobs = whole?.jobs ?? new Names();
    this.sheets = whole?.sheets ?? new Names();
    this.technicians = whole?.technicians ?? new Names();
    this.gauges = whole?.gauges ?? new Names();
    this.setups = whole?.setups ?? new Names();
    this.dimensions = whole?.dimensions ?? new Names();
    this.rounds = whole?.rounds ?? new Pairs();
    this.places = whole?.places ?? { all: [] };
    this.pairs = whole?.pairs ?? new Pairs();
    this.marks = whole?.marks ?? new Kinds();
    this.roundMarks = whole?.roundMarks ?? new Names();
    this.hands = whole?.hands ?? new Kinds();
    this.stated = whole?.stated ?? new Kinds();
    this.asides = whole?.asides ?? new Kinds();
  }

  /** The numbers that jobs, rounds and places of these lines may have: of a part of a file no others are looked at. */
  get numbers(): { jobs: Numbers; rounds: Numbers; places: Numbers } {
    if (this.within !== null) return this.within;
    const all = (end: number) => ({ first: 0, end });
    return {
      jobs: all(this.jobs.all.length),
      rounds: all(this.rounds.size),
      places: all(this.places.all.length),
    };
  }

  add(line: number, cells: Cells, takenAt: number, repeat: number, value: number): void {
    const at = this.size;
    if (at === this.line.length) this.grow();
    this.line[at] = line;
    this.placeAt[at] = cells.place;
    this.handAt[at] = cells.hand;
    this.setupAt[at] = cells.setup;
    this.statedAt[at] = cells.stated;
    this.asideAt[at] = cells.aside;
    this.repeat[at] = repeat;
    this.takenAt[at] = takenAt;
    this.value[at] = value;
    this.size = at + 1;
  }

  /** Takes the first lines out, as a part of the same file. What jobs they are of, no other line is of. */
  takeOut(end: number): LineTable {
    const part = new LineTable(this);
    part.within = this.numbersOf(end);
    part.size = end;
    part.line = cut(this.line, end, this.size);
    part.placeAt = cut(this.placeAt, end, this.size);
    part.handAt = cut(this.handAt, end, this.size);
    part.setupAt = cut(this.setupAt, end, this.size);
    part.statedAt = cut(this.statedAt, end, this.size);
    part.asideAt = cut(this.asideAt, end, this.size);
    part.repeat = cut(this.repeat, end, this.size);
    part.takenAt = cut(this.takenAt, end, this.size);
    part.value = cut(this.value, end, this.size);
    this.size -= end;
    return part;
  }

  private numbersOf(end: number): LineTable['numbers'] {
    const none = () => ({ first: Infinity, end: 0 });
    const [jobs, rounds, places] = [none(), none(), none()];
    for (let at = 0; at < end; at++) {
      const place = this.placeAt[at] ?? 0;
      if (place >= places.first && place < places.end) continue;
      const { job, round } = thing(this.places.all, place);
      widen(jobs, job);
      widen(rounds, round);
      widen(places, place);
    }
    return { jobs, rounds, places };
  }

  cellsOf(draft: Draft): Cells {
    const { technician, gauge, gaugeKind, setup } = draft;
    return {
      place: this.placeOf(draft),
      hand: this.hands.of(`${technician}\n${gauge}\n${gaugeKind ?? ''}`, () => ({
        technician: this.technicians.of(technician),
        gauge: this.gauges.of(gauge),
        kind: gaugeKind,
      })),
      setup: this.setups.of(setup),
      stated: this.statedOf(draft),
      aside: this.asideOf(draft),
    };
  }

  placeOf({ job, sheet, stage, attempt }: Pick<Draft, 'job' | 'sheet' | 'stage' | 'attempt'>): number {
    const mark = this.marks.of(`${sheet ?? ''}\n${stage}\n${attempt}`, () => ({
      sheet: sheet === null ? -1 : this.sheets.of(sheet),
      stage,
      attempt,
      round: this.roundMarks.of(`${stage}\n${attempt}`),
    }));
    return this.placeAtMark(this.jobs.of(job), mark);
  }

  /** The place of a job that is marked as another one was. */
  placeAtMark(job: number, mark: number): number {
    const place = this.pairs.of(job, mark);
    if (place === this.places.all.length) {
      const { sheet, stage, attempt, round } = thing(this.marks.all, mark);
      this.places.all.push({ job, sheet, stage, attempt, round: this.rounds.of(job, round), mark });
    }
    return place;
  }

  statedOf(of: Omit<Stated, 'name'>): number {
    const { quantity, point, side, section, station, zero, nominal, tolerance } = of;
    const key = `${quantity}\n${point}\n${side}\n${section}\n${station}\n${zero}\n${nominal}\n${tolerance}`;
    return this.stated.of(key, () => ({
      quantity,
      point,
      side,
      section,
      station,
      zero,
      nominal,
      tolerance,
      name: this.dimensions.of(dimensionName(of)),
    }));
  }

  asideOf({ clearance, cause }: Aside): number {
    return this.asides.of(`${clearance} ${cause}`, () => ({ clearance, cause }));
  }

  private grow(): void {
    const size = this.line.length * 2;
    const ints = (from: Int32Array) => {
      const to = new Int32Array(size);
      to.set(from);
      return to;
    };
    const doubles = (from: Float64Array) => {
      const to = new Float64Array(size);
      to.set(from);
      return to;
    };
    this.line = ints(this.line);
    this.placeAt = ints(this.placeAt);
    this.handAt = ints(this.handAt);
    this.setupAt = ints(this.setupAt);
    this.statedAt = ints(this.statedAt);
    this.asideAt = ints(this.asideAt);
    this.repeat = ints(this.repeat);
    this.takenAt = doubles(this.takenAt);
    this.value = doubles(this.value);
  }
}

/** The first numbers of a column, which the others take the place of. */
function cut<Column extends Int32Array | Float64Array>(column: Column, end: number, size: number): Column {
  const first = column.slice(0, end) as Column;
  column.copyWithin(0, end, size);
  return first;
}

function widen(numbers: Numbers, by: number): void {
  if (by < numbers.first) numbers.first = by;
  if (by >= numbers.end) numbers.end = by + 1;
}
