import type { Section } from '@/lib/measure/types';
import type { Draft } from '../draft';
import type { LineTable } from './line-table';
import { thing } from './names';
import { UNNUMBERED } from './line-table';

/** A line of the table as the rules across lines see it; what they fill in is kept in the table. */
export class LineDraft implements Draft {
  constructor(
    private readonly table: LineTable,
    private readonly at: number,
  ) {}

  get line() {
    return this.table.line[this.at] ?? 0;
  }
  get job() {
    return thing(this.table.jobs.all, this.place.job);
  }
  get sheet() {
    const { sheet } = this.place;
    return sheet < 0 ? null : thing(this.table.sheets.all, sheet);
  }
  set sheet(sheet: string | null) {
    const { stage, attempt } = this.place;
    this.table.placeAt[this.at] = this.table.placeOf({ job: this.job, sheet, stage, attempt });
  }
  get stage() {
    return this.place.stage;
  }
  get attempt() {
    return this.place.attempt;
  }
  get takenAt() {
    return this.table.takenAt[this.at] ?? 0;
  }
  get technician() {
    return thing(this.table.technicians.all, this.hand.technician);
  }
  get gauge() {
    return thing(this.table.gauges.all, this.hand.gauge);
  }
  get gaugeKind() {
    return this.hand.kind;
  }
  get setup() {
    return thing(this.table.setups.all, this.table.setupAt[this.at] ?? 0);
  }
  get quantity() {
    return this.stated.quantity;
  }
  get point() {
    return this.stated.point;
  }
  get side() {
    return this.stated.side;
  }
  get station() {
    return this.stated.station;
  }
  get section() {
    return this.stated.section;
  }
  set section(section: Section | null) {
    this.table.statedAt[this.at] = this.table.statedOf({ ...this.stated, section });
  }
  get zero() {
    return this.stated.zero;
  }
  set zero(zero: boolean | null) {
    this.table.statedAt[this.at] = this.table.statedOf({ ...this.stated, zero });
  }
  get nominal() {
    return this.stated.nominal;
  }
  set nominal(nominal: number | null) {
    this.table.statedAt[this.at] = this.table.statedOf({ ...this.stated, nominal });
  }
  get tolerance() {
    return this.stated.tolerance;
  }
  set tolerance(tolerance: number | null) {
    this.table.statedAt[this.at] = this.table.statedOf({ ...this.stated, tolerance });
  }
  get clearance() {
    return this.quantity === 'height' ? this.aside.clearance : 0;
  }
  set clearance(clearance: number | null) {
    this.table.asideAt[this.at] = this.table.asideOf({ clearance, cause: this.cause });
  }
  get repeat() {
    const repeat = this.table.repeat[this.at] ?? UNNUMBERED;
    return repeat === UNNUMBERED ? null : repeat;
  }
  get value() {
    return this.table.value[this.at] ?? 0;
  }
  get cause() {
    return this.aside.cause;
  }

  private get place() {
    return thing(this.table.places.all, this.table.placeAt[this.at] ?? 0);
  }
  private get hand() {
    return thing(this.table.hands.all, this.table.handAt[this.at] ?? 0);
  }
  private get stated() {
    return thing(this.table.stated.all, this.table.statedAt[this.at] ?? 0);
  }
  private get aside() {
    return thing(this.table.asides.all, this.table.asideAt[this.at] ?? 0);
  }
}
