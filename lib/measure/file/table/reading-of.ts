import type { GaugeKind, Reading } from '@/lib/measure/types';
import type { Aside, Hand, Place } from './line-table';
import { thing } from './names';
import type { TableDimension } from './reading-table';

/** Lines by numbers, and what these stand for. */
export interface ToldLines extends LineColumns {
  jobs: { all: readonly string[] };
  sheets: { all: readonly string[] };
  technicians: { all: readonly string[] };
  gauges: { all: readonly string[] };
  setups: { all: readonly string[] };
  places: { all: readonly Place[] };
  hands: { all: readonly Hand[] };
  asides: { all: readonly Pick<Aside, 'cause'>[] };
}

/** A number for each line. */
export interface LineColumns {
  line: Int32Array;
  placeAt: Int32Array;
  handAt: Int32Array;
  setupAt: Int32Array;
  statedAt: Int32Array;
  asideAt: Int32Array;
  repeat: Int32Array;
  takenAt: Float64Array;
  value: Float64Array;
}

/** Lines with what they say together. */
export interface AgreedLines {
  readonly lines: ToldLines;
  sheetOf: (job: number) => string | null;
  kindOf: (gauge: number) => GaugeKind | null;
  dimensionAt: (at: number) => TableDimension;
  clearanceOf: (round: number) => number;
}

export function readingOf(table: AgreedLines, at: number): Reading {
  const { lines } = table;
  const { job, stage, attempt, round } = thing(lines.places.all, lines.placeAt[at] ?? 0);
  const { technician, gauge } = thing(lines.hands.all, lines.handAt[at] ?? 0);
  const { quantity, point, side, section, station, zero, nominal, tolerance } = table.dimensionAt(at);
  return {
    line: lines.line[at] ?? 0,
    job: thing(lines.jobs.all, job),
    sheet: table.sheetOf(job),
    stage,
    attempt,
    takenAt: lines.takenAt[at] ?? 0,
    technician: thing(lines.technicians.all, technician),
    gauge: thing(lines.gauges.all, gauge),
    gaugeKind: table.kindOf(gauge),
    setup: thing(lines.setups.all, lines.setupAt[at] ?? 0),
    quantity,
    point,
    side,
    section,
    station,
    zero,
    nominal,
    tolerance,
    clearance: quantity === 'height' ? table.clearanceOf(round) : 0,
    repeat: lines.repeat[at] ?? 0,
    value: lines.value[at] ?? 0,
    cause: thing(lines.asides.all, lines.asideAt[at] ?? 0).cause,
  };
}
