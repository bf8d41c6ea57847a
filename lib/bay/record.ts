import { dimensionKey } from '@/lib/measure/dimension';
import type { GaugeKind } from '@/lib/measure/types';
import type { DimensionRef, Entry, EquipmentCheck, KeptEntry, Step } from './entry';

export interface RecordedReading {
  dimension: DimensionRef;
  repeat: number;
  /** Millimetres, as read; the last correction counts. */
  value: number;
  at: number;
  /** Why it was corrected, or null. */
  corrected: string | null;
}

export interface RecordedSetup {
  label: string;
  place: string;
  gauge: string;
  gaugeKind: GaugeKind;
  /** Code of whose hand hung it. */
  hand: string;
  at: number;
  /** By dimension and repeat, in the order they were read. */
  readings: Map<string, RecordedReading>;
}

export interface Skipped {
  step: Step;
  place: string | null;
  reason: string;
}

/** Two values for one reading, the second of which was not taken. */
export interface Contradiction {
  key: string;
  setup: string;
  dimension: DimensionRef;
  repeat: number;
  first: number;
  second: number;
  why: string;
}

/** What a round's entries come to. */
export interface BayRecord {
  checks: Map<EquipmentCheck, { ok: boolean; note: string | null }>;
  /** In the order they were hung, by the devices' clocks. */
  setups: RecordedSetup[];
  skipped: Skipped[];
  contradictions: Contradiction[];
  finished: boolean;
}

export const readingKey = (dimension: DimensionRef, repeat: number): string =>
  `${dimensionKey(dimension)} #${repeat}`;

/**
 * What the entries come to: first those that the shop has kept, in the order of their arrival, then those of this
 * device that are still on their way, in the order they were made. An entry that is in both counts once. Of two
 * devices it does not matter whose entries arrived first, but where they contradict each other.
 * @param by code of who entered what is still on its way.
 */
export function recordOf(kept: readonly KeptEntry[], own: readonly Entry[], by: string): BayRecord {
  const record = new Recording();
  const known = new Set(kept.map(({ key }) => key));
  for (const entry of [...kept].sort((a, b) => a.id - b.id)) record.take(entry, entry.by, 'kept');
  for (const entry of [...own].sort((a, b) => a.sequence - b.sequence))
    if (!known.has(entry.key)) record.take({ ...entry, conflict: null }, by, 'on its way');
  return record.come();
}

type Taken = Entry & { conflict: string | null };
/** What the shop has kept without a conflict is in the measurements; what is on its way is only held to be. */
type Where = 'kept' | 'on its way';
type Body<Kind extends Entry['body']['kind']> = Extract<Entry['body'], { kind: Kind }>;

/** Where an entry stands among those of all devices. */
interface Stamp {
  at: number;
  device: string;
  sequence: number;
}

const inOrder = (a: Stamp, b: Stamp): number =>
  a.at - b.at || (a.device < b.device ? -1 : a.device > b.device ? 1 : a.sequence - b.sequence);

interface Hung {
  setup: RecordedSetup;
  stamp: Stamp;
  /** Why the shop did not take the hanging, or null. */
  conflict: string | null;
}

class Recording {
  /** The latest entry of each device, by its clock. */
  readonly #clocks = new Map<string, number>();
  readonly #checks = new Map<EquipmentCheck, { ok: boolean; note: string | null; stamp: Stamp }>();
  readonly #setups = new Map<string, Hung>();
  /** What was left out, or (without a reason) taken up again. */
  readonly #skipped = new Map<string, { skipped: Skipped | null; stamp: Stamp }>();
  readonly #contradictions = new Map<string, Contradiction & { at: number }>();
  #finished = false;

  take(entry: Taken, by: string, where: Where): void {
    const { body } = entry;
    const stamp = this.#stampOf(entry);
    switch (body.kind) {
      case 'equipment': {
        const { check, ok, note } = body;
        if (isLater(stamp, this.#checks.get(check))) this.#checks.set(check, { ok, note, stamp });
        break;
      }
      case 'hang':
        this.#hang(entry, body, by, stamp);
        break;
      case 'read':
      case 'correct':
        this.#read(entry, body, where);
        break;
      case 'skip':
      case 'resume': {
        const { step, place } = body;
        const at = `${step} ${place ?? ''}`;
        const skipped = body.kind === 'skip' ? { step, place, reason: body.reason } : null;
        if (isLater(stamp, this.#skipped.get(at))) this.#skipped.set(at, { skipped, stamp });
        break;
      }
      case 'settle':
        if (entry.conflict === null) this.#settle(body);
        break;
      case 'finish':
        this.#finished = true;
        break;
    }
  }

  /** A clock that was put back does not put what a device did later before what it did earlier. */
  #stampOf({ device, sequence, at }: Entry): Stamp {
    const latest = Math.max(at, this.#clocks.get(device) ?? -Infinity);
    this.#clocks.set(device, latest);
    return { at: latest, device, sequence };
  }

  #hang({ at, conflict }: Taken, body: Body<'hang'>, by: string, stamp: Stamp): void {
    const { setup: label, place, gauge, gaugeKind } = body;
    const there = this.#setups.get(label);
    // A label is given once; a second one of the same name is the same hanging, told again.
    if (there !== undefined && (there.conflict === null || conflict !== null)) return;
    const hand = body.hand ?? by;
    const setup = { label, place, gauge, gaugeKind, hand, at, readings: new Map<string, RecordedReading>() };
    this.#setups.set(label, { setup, stamp, conflict });
  }

  #read(entry: Taken, body: Body<'read' | 'correct'>, where: Where): void {
    const { dimension, repeat, value } = body;
    const hung = this.#setups.get(body.setup);
    const at = readingKey(dimension, repeat);
    const there = hung?.setup.readings.get(at);
    const why = entry.conflict ?? (where === 'kept' ? null : whyNot(body, hung, there));
    if (why !== null || hung === undefined) {
      this.#contradictions.set(entry.key, {
        key: entry.key,
        setup: body.setup,
        dimension,
        repeat,
        first: there?.value ?? value,
        second: value,
        why: why ?? WHY_NOT.notHung,
        at: entry.at,
      });
      return;
    }
    const corrected = body.kind === 'correct' ? body.reason : (there?.corrected ?? null);
    hung.setup.readings.set(at, { dimension, repeat, value, at: there?.at ?? entry.at, corrected });
  }

  #settle({ key, keep, reason }: Body<'settle'>): void {
    const open = this.#contradictions.get(key);
    if (open === undefined) return;
    this.#contradictions.delete(key);
    const hung = this.#setups.get(open.setup);
    if (keep === 'first' || hung === undefined) return;
    // What stood against the hanging was mended, or its reading could not be taken now.
    hung.conflict = null;
    const { dimension, repeat, second: value } = open;
    const at = readingKey(dimension, repeat);
    const there = hung.setup.readings.get(at);
    const corrected = there === undefined ? null : reason;
    hung.setup.readings.set(at, { dimension, repeat, value, at: there?.at ?? open.at, corrected });
  }

  come(): BayRecord {
    return {
      checks: new Map([...this.#checks].map(([check, { ok, note }]) => [check, { ok, note }])),
      setups: [...this.#setups.values()]
        .filter(({ conflict }) => conflict === null)
        .sort((a, b) => inOrder(a.stamp, b.stamp))
        .map(({ setup }) => setup),
      skipped: [...this.#skipped.values()].flatMap(({ skipped }) => skipped ?? []),
      contradictions: [...this.#contradictions.values()].map(({ at: _, ...one }) => one),
      finished: this.#finished,
    };
  }
}

const isLater = (stamp: Stamp, there: { stamp: Stamp } | undefined): boolean =>
  there === undefined || inOrder(stamp, there.stamp) > 0;

/** Why the device itself holds that a reading will not be taken; what the shop says comes in the reader's language. */
export const WHY_NOT = {
  notHung: 'Its gauge was not hung in this round.',
  nothingToCorrect: 'There is no such reading to correct.',
  anotherValue: 'Another value was entered for the same reading.',
} as const;

/** Why a reading that is still on its way will not be taken, as far as the device can tell; null where it will. */
function whyNot(
  body: Body<'read' | 'correct'>,
  hung: Hung | undefined,
  there: RecordedReading | undefined,
): string | null {
  if (hung === undefined) return WHY_NOT.notHung;
  if (hung.conflict !== null) return hung.conflict;
  if (there === undefined) return body.kind === 'read' ? null : WHY_NOT.nothingToCorrect;
  const expected = body.kind === 'read' ? body.value : body.from;
  return there.value === expected || there.value === body.value ? null : WHY_NOT.anotherValue;
}
