import { planOf, type Entry, type EntryBody, type Place } from '@/lib/bay';
import type { NewBayRound } from '@/lib/store';
import { storedSheet } from './dimensions';
import { SHEETS } from './sheets';
import { FIRST_JOB_NUMBER, JOBS } from './stories';

const MINUTE = 60_000;
const CLEARANCE = 100;
/** Of the technician who measures, and the tablet that lay on the other side of the car. */
const [OWN, OTHER] = ['k7p', 'm4x'];

/** A round that somebody left when the shop closed: begun in the order of the trade, open where it stopped. */
export interface DemoBayRound {
  round: NewBayRound;
  /** Code of whoever measures. */
  by: string;
  /** In the order in which they reached the shop. */
  entries: Entry[];
}

/**
 * The equipment is checked, one rail of the center section could not be reached, the rest of its lengths are read. Two
 * tablets say different things of one diagonal. The first zero gauge hangs and has been read once on the left.
 * @param after time of the shop's newest reading, ms.
 */
export function demoBayRound(after: number): DemoBayRound {
  const sheet = SHEETS.find(({ name }) => name === 'Small hatch');
  if (sheet === undefined) throw new Error('The demo shop has no sheet for its open round.');
  const stored = storedSheet(sheet);
  const plan = planOf({ ...stored, revision: 1 });
  const lengths = placesOf(plan, 'center-lengths');
  const [zero] = placesOf(plan, 'zero-gauges');
  const [rail, ...others] = lengths;
  const diagonal = others.at(-1);
  if (rail === undefined || diagonal === undefined || zero === undefined)
    throw new Error('The sheet of the open round has no center section.');
  const own = new Device(OWN, after + 20 * MINUTE, 1);
  const other = new Device(OTHER, after + 33 * MINUTE, 2);
  const label = (number: number, device: string) => `b1-${number}${device}`;

  for (const check of ['pointers-equal', 'same-tips', 'fixed-mark', 'looks-sound'] as const)
    own.enter({ kind: 'equipment', check, ok: true, note: null });
  own.enter({
    ...{ kind: 'skip', step: 'center-lengths', place: rail.key },
    reason: 'A bent cross member is in the way.',
  });
  others.forEach((place, i) => {
    const setup = label(i + 1, OWN);
    own.enter({ kind: 'hang', setup, place: place.key, gauge: 'TR1', gaugeKind: 'tram', hand: null });
    own.enter(readOf(place, setup, [0.4, -0.3, 0.8][i] ?? 0));
  });
  const zeroSetup = label(others.length + 1, OWN);
  own.enter({
    ...{ kind: 'hang', setup: zeroSetup, place: zero.key, gauge: 'CG1' },
    ...{ gaugeKind: 'centering', hand: null },
  });
  own.enter(readOf(zero, zeroSetup, 0.3));
  // The same reading of the same setting, told again from the other side of the car.
  other.enter(readOf(diagonal, label(others.length, OWN), 3.1));
  return {
    round: {
      ...{ job: `K${FIRST_JOB_NUMBER + JOBS}`, sheet: sheet.name, stage: 'before', attempt: 1 },
      clearance: CLEARANCE,
    },
    by: 'QUI',
    entries: [...own.entries, ...other.entries],
  };
}

const placesOf = (plan: ReturnType<typeof planOf>, step: Place['step']): Place[] =>
  plan.find((one) => one.step === step)?.places ?? [];

/** The first reading of the first dimension of a place, so far from the sheet, mm. */
function readOf({ dimensions: [dimension] }: Place, setup: string, deviation: number): EntryBody {
  if (dimension === undefined) throw new Error('A place without a dimension has nothing to read.');
  const { quantity, point, side, nominal } = dimension;
  const value = nominal + (quantity === 'height' ? CLEARANCE : 0) + deviation;
  return {
    ...{ kind: 'read', setup, dimension: { quantity, point, side, nominal } },
    ...{ repeat: 1, value: Number(value.toFixed(1)) },
  };
}

/** Makes entries as a tablet makes them, one a minute; the same keys every time, so that none is kept twice. */
class Device {
  readonly entries: Entry[] = [];
  readonly #name: string;
  readonly #from: number;
  readonly #number: number;

  constructor(name: string, from: number, number: number) {
    this.#name = name;
    this.#from = from;
    this.#number = number;
  }

  enter(body: EntryBody): void {
    const sequence = this.entries.length + 1;
    this.entries.push({
      key: `00000000-0000-4000-8000-${String(1000 * this.#number + sequence).padStart(12, '0')}`,
      device: this.#name,
      sequence,
      at: this.#from + sequence * MINUTE,
      body,
    });
  }
}
