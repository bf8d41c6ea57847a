import { lengthDimension } from './dimensions';
import { gaugeError } from './gauge';
import { pointToPoint, type Body } from './geometry';
import type { Random } from './random';
import type { OpenSetup, RoundRecord } from './record';
import type { SheetLength, VehicleSheet } from './sheet';
import type { LengthTruth } from './truth';
import { gaugesOf, type AtWork, type Workshop } from './workshop';

/** Share of rounds that begin with a quick check by tape. */
const TAPE_SHARE = 0.08;

/** Reads the lengths of a round: a tape first where one is used, then the center section, then the rest. */
export function readLengths(
  workshop: Workshop,
  sheet: VehicleSheet,
  body: Body,
  who: AtWork,
  record: RoundRecord,
  random: Random,
): LengthTruth[] {
  const trams = [...gaugesOf(workshop, 'tram'), ...gaugesOf(workshop, 'digital-tram')];
  const tram = random.pick(trams);
  const truth: LengthTruth[] = [];
  const repeats = () => (workshop.reading === 'thorough' ? drawRepeats(random) : 1);

  const read = (setup: OpenSetup, length: SheetLength) => {
    const change =
      pointToPoint(sheet.stations, length.ends, body) - pointToPoint(sheet.stations, length.ends);
    record.read(setup, lengthDimension(sheet, length), change + gaugeError(setup.gauge, setup.at));
    truth.push({
      setup: setup.label,
      point: length.point,
      technician: who.code,
      gauge: setup.gauge.tag,
      change,
    });
  };

  const tapes = gaugesOf(workshop, 'tape');
  if (tapes.length > 0 && random.chance(TAPE_SHARE)) {
    const quick = sheet.lengths.filter((length) => length.section !== 'center');
    read(record.setUp(who, random.pick(tapes), 1), random.pick(quick));
  }
  for (const length of lengthsToRead(workshop, sheet)) read(record.setUp(who, tram, repeats()), length);

  const trackers = gaugesOf(workshop, 'tracking');
  if (trackers.length > 0 && workshop.reading === 'thorough') {
    for (const pair of sheet.tracking) {
      const setup = record.setUp(who, random.pick(trackers), repeats());
      for (const length of pair) read(setup, length);
    }
  }
  return truth;
}

/** Center section first. A usual round keeps it and the first length beyond it; a brief one of the center its diagonals. */
function lengthsToRead(workshop: Workshop, sheet: VehicleSheet): SheetLength[] {
  const of = (section: SheetLength['section']) =>
    sheet.lengths.filter((length) => length.section === section);
  if (workshop.reading === 'thorough') return [...of('center'), ...of('front'), ...of('rear')];
  return [...of('center').slice(workshop.reading === 'brief' ? 2 : 0), ...of('front').slice(0, 1)];
}

/** One to three readings with the gauge untouched. */
export function drawRepeats(random: Random): number {
  return random.weighted([
    [1, 50],
    [2, 30],
    [3, 20],
  ]);
}
