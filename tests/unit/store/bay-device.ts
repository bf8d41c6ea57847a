import { randomUUID } from 'node:crypto';
import type { BayHead, DimensionRef, Entry, EntryBody } from '@/lib/bay';
import type { Dimension } from '@/lib/measure';
import {
  beginBayRound,
  getBayRound,
  savePeople,
  saveSheet,
  takeBayEntries,
  type Actor,
  type NewBayRound,
  type Person,
} from '@/lib/store';
import { BY_COMMAND } from './invented-readings';

export const SHEET = 'Sheet of the bay';
export const ROUND: NewBayRound = { job: 'J1', sheet: SHEET, stage: 'before', attempt: 1, clearance: 100 };
const START = Date.UTC(2026, 4, 4, 8, 0);

const height = (point: string, side: 'L' | 'R', station: number, nominal: number): Dimension => ({
  ...{ quantity: 'height', point, side, station, nominal, tolerance: 3 },
  section: station < 1000 ? 'front' : 'center',
  zero: station > 1000,
});

/** Both zero stations, one station in front, a length of the center section. */
export const DIMENSIONS: Dimension[] = [
  ...(['L', 'R'] as const).flatMap((side) => [
    height('A', side, 1200, 200),
    height('B', side, 2400, 210),
    height('K', side, 300, 250),
  ]),
  {
    ...{ quantity: 'length', point: 'A-B', side: null, section: 'center', station: null, zero: false },
    ...{ nominal: 1203.5, tolerance: 3 },
  },
];

export const dimension = (point: string, side: 'L' | 'R' | null = null): Dimension => {
  const found = DIMENSIONS.find((one) => one.point === point && one.side === side);
  if (found === undefined) throw new Error(`The sheet has no ${point} ${side ?? ''}.`);
  return found;
};

export const refOf = ({ quantity, point, side, nominal }: Dimension): DimensionRef => ({
  ...{ quantity, point, side, nominal },
});

export const person = (code: string, role: Person['role'] = 'technician'): Person => ({
  ...{ code, name: `Somebody ${code}`, role, active: true },
});

export const by = (code: string): Actor => ({ person: code, via: 'page' });

/** A shop with three people and a sheet, and a round that is open. */
export async function openRound(shop: number, round: Partial<NewBayRound> = {}): Promise<number> {
  await savePeople(shop, [person('ONE'), person('TWO'), person('TRA', 'trainer')], BY_COMMAND);
  await saveSheet(shop, { name: SHEET, dimensions: DIMENSIONS, points: [] }, BY_COMMAND);
  return beginBayRound(shop, { ...ROUND, ...round }, 'ONE', by('ONE'));
}

export async function headOf(shop: number, id: number): Promise<BayHead> {
  const head = await getBayRound(shop, id);
  if (head === null) throw new Error('There is no such round.');
  return head;
}

/** Makes entries as a device does: numbered without a gap, half a minute apart. */
export class Device {
  readonly made: Entry[] = [];

  constructor(
    readonly name: string,
    readonly startsAt = START,
  ) {}

  make(body: EntryBody): Entry {
    const sequence = this.made.length + 1;
    const at = this.startsAt + sequence * 30_000;
    const entry: Entry = { key: randomUUID(), device: this.name, sequence, at, body };
    this.made.push(entry);
    return entry;
  }

  hang(setup: string, change: Partial<Extract<EntryBody, { kind: 'hang' }>> = {}): Entry {
    const body = { kind: 'hang', setup, place: `at ${setup}`, gauge: 'C1' } as const;
    return this.make({ ...body, gaugeKind: 'centering', hand: null, ...change });
  }

  read(setup: string, of: Dimension, value: number, repeat = 1): Entry {
    return this.make({ kind: 'read', setup, dimension: refOf(of), repeat, value });
  }

  correct(setup: string, of: Dimension, from: number, value: number, repeat = 1): Entry {
    const body = { kind: 'correct', setup, dimension: refOf(of), repeat, from, value } as const;
    return this.make({ ...body, reason: 'misread' });
  }

  settle(key: string, keep: 'first' | 'second', reason = 'read again'): Entry {
    return this.make({ kind: 'settle', key, keep, reason });
  }
}

export const send = (
  shop: number,
  round: number,
  entries: readonly Entry[],
  code = 'ONE',
  forOthers = false,
): Promise<void> => takeBayEntries(shop, round, entries, { by: code, forOthers }, by(code));
