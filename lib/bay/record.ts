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
  /** In the order they were hung. */
  setups: RecordedSetup[];
  skipped: Skipped[];
  contradictions: Contradiction[];
  finished: boolean;
}

export const readingKey = (dimension: DimensionRef, repeat: number): string =>
  `${dimensionKey(dimension)} #${repeat}`;

/**
 * What the entries come to: first those that the shop has kept, in the order of their arrival, then those of this
 * device that are still on their way, in the order they were made. An entry that is in both counts once.
 * @param by code of who entered what is still on its way.
 */
export function recordOf(kept: readonly KeptEntry[], own: readonly Entry[], by: string): BayRecord {
  const record = new Recording();
  const known = new Set(kept.map(({ key }) => key));
  for (const entry of [...kept].sort((a, b) => a.id - b.id)) record.take(entry, entry.by);
  for (const entry of [...own].sort((a, b) => a.sequence - b.sequence))
    if (!known.has(entry.key)) record.take({ ...entry, conflict: null }, by);
  return record.come();
}

type Taken = Entry & { conflict: string | null };

class Recording {
  readonly #checks: BayRecord['checks'] = new Map();
  readonly #setups = new Map<string, RecordedSetup>();
  readonly #skipped = new Map<string, Skipped>();
  readonly #contradictions = new Map<string, Contradiction>();
  #finished = false;

  take(entry: Taken, by: string): void {
    const { body } = entry;
    switch (body.kind) {
      case 'equipment':
        this.#checks.set(body.check, { ok: body.ok, note: body.note });
        break;
      case 'hang':
        // A label is given once; a second one of the same name is the same hanging, told again.
        if (!this.#setups.has(body.setup))
          this.#setups.set(body.setup, {
            label: body.setup,
            place: body.place,
            gauge: body.gauge,
            gaugeKind: body.gaugeKind,
            hand: body.hand ?? by,
            at: entry.at,
            readings: new Map(),
          });
        break;
      case 'read':
      case 'correct':
        this.#read(entry, body);
        break;
      case 'skip':
        this.#skipped.set(`${body.step} ${body.place ?? ''}`, {
          step: body.step,
          place: body.place,
          reason: body.reason,
        });
        break;
      case 'resume':
        this.#skipped.delete(`${body.step} ${body.place ?? ''}`);
        break;
      case 'settle':
        this.#settle(body);
        break;
      case 'finish':
        this.#finished = true;
        break;
    }
  }

  #read(entry: Taken, body: Extract<Entry['body'], { kind: 'read' | 'correct' }>): void {
    const setup = this.#setups.get(body.setup);
    if (setup === undefined) return;
    const { dimension, repeat, value } = body;
    const at = readingKey(dimension, repeat);
    const there = setup.readings.get(at);
    const contradicts =
      there !== undefined && (body.kind === 'read' ? there.value !== value : there.value !== body.from);
    if (entry.conflict !== null || (contradicts && there.value !== value)) {
      this.#contradictions.set(entry.key, {
        key: entry.key,
        setup: body.setup,
        dimension,
        repeat,
        first: there?.value ?? value,
        second: value,
        why: entry.conflict ?? 'Another value was entered for the same reading.',
      });
      return;
    }
    if (body.kind === 'correct' && there === undefined) return;
    setup.readings.set(at, {
      dimension,
      repeat,
      value,
      at: there?.at ?? entry.at,
      corrected: body.kind === 'correct' ? body.reason : (there?.corrected ?? null),
    });
  }

  #settle({ key, keep, reason }: Extract<Entry['body'], { kind: 'settle' }>): void {
    const open = this.#contradictions.get(key);
    if (open === undefined) return;
    this.#contradictions.delete(key);
    if (keep === 'first') return;
    const at = readingKey(open.dimension, open.repeat);
    const readings = this.#setups.get(open.setup)?.readings;
    const there = readings?.get(at);
    if (readings !== undefined && there !== undefined)
      readings.set(at, { ...there, value: open.second, corrected: reason });
  }

  come(): BayRecord {
    return {
      checks: this.#checks,
      setups: [...this.#setups.values()],
      skipped: [...this.#skipped.values()],
      contradictions: [...this.#contradictions.values()],
      finished: this.#finished,
    };
  }
}
