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

/** Stands for a repeat that is not numbered (yet). */
export const UNNUMBERED = 0;
const FIRST = 1024;

/**
 * The sound lines of a file, some 45 bytes each: what recurs is kept once, and a line holds its numbers. A file of a
 * million readings so takes no more memory than its database's cache.
 */
export class LineTable {
  readonly jobs = new Names();
  readonly sheets = new Names();
  readonly technicians = new Names();
  readonly gauges = new Names();
  readonly setups = new Names();
  readonly dimensions = new Names();
  readonly rounds = new Pairs();
  /** Places by their numbers; a number for each of job and mark. */
  readonly places = { all: [] as Place[] };
  private readonly pairs = new Pairs();
  private readonly marks = new Kinds<Mark & { round: number }>();
  private readonly roundMarks = new Names();
  readonly hands = new Kinds<Hand>();
  readonly stated = new Kinds<Stated>();
  readonly asides = new Kinds<Aside>();
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

  /** The lines from one to another, copied, with the same numbers for all that is named. */
  part(from: number, to: number): LineTable {
    const part = Object.create(this) as LineTable;
    part.size = to - from;
    part.line = this.line.slice(from, to);
    part.placeAt = this.placeAt.slice(from, to);
    part.handAt = this.handAt.slice(from, to);
    part.setupAt = this.setupAt.slice(from, to);
    part.statedAt = this.statedAt.slice(from, to);
    part.asideAt = this.asideAt.slice(from, to);
    part.repeat = this.repeat.slice(from, to);
    part.takenAt = this.takenAt.slice(from, to);
    part.value = this.value.slice(from, to);
    return part;
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
      ...{ sheet: sheet === null ? -1 : this.sheets.of(sheet), stage, attempt },
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
      ...{ quantity, point, side, section, station, zero, nominal, tolerance },
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
