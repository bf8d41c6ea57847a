import type { Cause, Side } from '@/lib/measure';
import { centerlineDimension, centerlineStations, heightDimension } from './dimensions';
import type { GaugeModel } from './gauge';
import { datumWeights, stationAt, type Body } from './geometry';
import type { Random } from './random';
import { heightBias, type OpenSetup, type RoundRecord } from './record';
import { setGauge, type Setting } from './setting';
import type { VehicleSheet } from './sheet';
import type { HeightTruth } from './truth';
import type { AtWork } from './workshop';

const SIDES: readonly Side[] = ['L', 'R'];

/** The settings that the two zero gauges hang with: the datum that all others are levelled with. */
export type Datum = [Record<Side, Setting>, Record<Side, Setting>];

/** The round and the vehicle that gauges are hung on. */
export interface Hanging {
  sheet: VehicleSheet;
  body: Body;
  clearance: number;
  record: RoundRecord;
  random: Random;
}

/** A gauge hung and read on both sides. */
export interface Hung {
  setting: Record<Side, Setting>;
  heights: HeightTruth[];
}

/** Hangs and reads a zero gauge. Its own setting does not show in its own reading: only reading noise does. */
export function hangZero(on: Hanging, station: number, setup: OpenSetup): Hung {
  const setting = drawSetting(on, station, setup);
  const heights = SIDES.map((side) =>
    readHeight(on, station, side, setup, setting[side], {
      gauge: total(setting[side]),
      body: bodyAt(on, station, side),
      bias: 0,
      shown: 0,
    }),
  );
  return { setting, heights };
}

/** Hangs and reads another gauge, level with the zero gauges as they hang. */
export function hangOther(on: Hanging, station: number, setup: OpenSetup, datum: Datum): Hung {
  const { sheet } = on;
  const { x } = stationAt(sheet.stations, station);
  const [wa, wb] = datumWeights(sheet.stations, sheet.zeros, x);
  const [a, b] = sheet.zeros;
  const setting = drawSetting(on, station, setup);
  const heights = SIDES.map((side) => {
    const gauge = total(setting[side]) - wa * total(datum[0][side]) - wb * total(datum[1][side]);
    const body = bodyAt(on, station, side) - wa * bodyAt(on, a, side) - wb * bodyAt(on, b, side);
    const bias = heightBias(setup);
    return readHeight(on, station, side, setup, setting[side], {
      gauge,
      body,
      bias,
      shown: gauge + body + bias,
    });
  });
  readCentrePin(on, station, setup, [wa, wb]);
  return { setting, heights };
}

function drawSetting(
  { sheet, clearance, random }: Hanging,
  station: number,
  { who, gauge }: { who: AtWork; gauge: GaugeModel },
): Record<Side, Setting> {
  const at = stationAt(sheet.stations, station);
  const neighbours = [sheet.stations[station - 1], sheet.stations[station + 1]].flatMap((row) =>
    row === undefined ? [] : [row.height],
  );
  const place = { nominal: at.height, clearance, neighbours, fixedMark: gauge.fixedMark ?? 0, zero: at.zero };
  const setting = setGauge(who.hand, place, random);
  // The zero gauges are set with more care: equal errors at both would cancel along the datum line anyway.
  const low = at.zero ? 0 : who.hand.leftLow;
  return { ...setting, L: { ...setting.L, scatter: setting.L.scatter - low } };
}

function readHeight(
  { sheet, record }: Hanging,
  station: number,
  side: Side,
  setup: OpenSetup,
  setting: Setting,
  parts: { gauge: number; body: number; bias: number; shown: number },
): HeightTruth {
  const at = stationAt(sheet.stations, station);
  const deviation = record.read(setup, heightDimension(sheet, at, side), parts.shown);
  return {
    setup: setup.label,
    station: at.x,
    point: at.letters[side],
    side,
    zero: at.zero,
    technician: setup.who.code,
    gauge: setup.gauge.tag,
    takenAt: setup.at,
    deviation,
    scatter: setting.scatter,
    gross: setting.gross,
    fault: setting.fault,
    gaugePart: parts.gauge,
    bodyPart: parts.body,
    bias: parts.bias,
    cause: causeOf(parts.gauge, parts.body, sheet.tolerance),
    superseded: false,
    labelled: false,
  };
}

/** The centre pins are sighted over the zero gauges' pins: sway shows against the line through both. */
function readCentrePin(on: Hanging, station: number, setup: OpenSetup, [wa, wb]: [number, number]): void {
  const { sheet, body, record, random } = on;
  const at = stationAt(sheet.stations, station);
  if (!centerlineStations(sheet).includes(at)) return;
  const middle = (index: number) => {
    const points = body[index];
    return points === undefined ? 0 : (points.L.across + points.R.across) / 2;
  };
  const [a, b] = sheet.zeros;
  const sway = middle(station) - wa * middle(a) - wb * middle(b);
  // Sighting along three pins adds about as much as one hanger's setting does.
  record.read(setup, centerlineDimension(sheet, at), sway + random.normal(setup.who.hand.setting));
}

function bodyAt({ body }: Hanging, station: number, side: Side): number {
  return body[station]?.[side].up ?? 0;
}

function total({ scatter, gross }: Setting): number {
  return scatter + gross;
}

/** A part counts when it is larger than the tolerance. */
function causeOf(gauge: number, body: number, tolerance: number): Cause {
  const gaugeCounts = Math.abs(gauge) > tolerance;
  const bodyCounts = Math.abs(body) > tolerance;
  if (gaugeCounts) return bodyCounts ? 'both' : 'gauge';
  return bodyCounts ? 'body' : 'neither';
}
