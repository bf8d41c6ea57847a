import { setupDimensionKey, type RecordedDimension } from '@/lib/assess';
import { dimensionKey, QUANTITIES, SECTIONS, type Stage } from '@/lib/measure';
import { conformity } from '@/lib/stats';
import type { RecordedRound } from './gather';
import { inOrder } from '@/app/_words/in-order';

/** One dimension as one round has it. */
export interface Held {
  dimension: RecordedDimension;
  /** As read, mm: for heights with the clearance of the round. */
  read: number;
  /** Standard uncertainty, mm; null where it is not known. */
  uncertainty: number | null;
  /**
   * That the dimension truly lies where the reading says, in or out. Null where that is not known: without an uncertainty,
   * at a zero station, which is read against itself, and for heights that no center section carries.
   */
  sure: number | null;
}

export interface Compared {
  dimension: RecordedDimension;
  before: Held | null;
  after: Held | null;
}

/** The last round of a stage, which counts for the record; null where there is none. */
export const lastOf = (rounds: readonly RecordedRound[], stage: Stage): RecordedRound | null =>
  rounds.findLast(({ round }) => round.stage === stage) ?? null;

/** Every dimension of both rounds: heights, lengths, centre pins, each from front to rear. */
export function compared(before: RecordedRound | null, after: RecordedRound | null): Compared[] {
  const rows = new Map<string, Compared>();
  for (const stage of ['before', 'after'] as const) {
    const round = stage === 'before' ? before : after;
    if (round === null) continue;
    const seen = new Map<string, number>();
    for (const dimension of round.dimensions) {
      // Two lengths may share their name: the first of one round stands beside the first of the other.
      const name = dimensionKey(dimension);
      const turn = (seen.get(name) ?? 0) + 1;
      seen.set(name, turn);
      const key = `${name} ${turn}`;
      const row = rows.get(key) ?? { dimension, before: null, after: null };
      rows.set(key, { ...row, [stage]: held(round, dimension) });
    }
  }
  return [...rows.values()].sort(frontToRear);
}

function held({ round, verdict, uncertainties }: RecordedRound, dimension: RecordedDimension): Held {
  const { quantity, zero, nominal, deviation, tolerance, within, setup } = dimension;
  const uncertainty = uncertainties.get(setupDimensionKey(setup, dimension)) ?? null;
  const isHeight = quantity === 'height';
  const told = uncertainty !== null && !(isHeight && (zero || verdict?.decidable === false));
  return {
    dimension,
    uncertainty,
    read: nominal + (isHeight ? round.clearance : 0) + deviation,
    sure: told ? sureness(deviation, tolerance, uncertainty, within) : null,
  };
}

function sureness(value: number, tolerance: number, uncertainty: number, within: boolean): number {
  const { probability, nonconforming } = conformity({
    value,
    uncertainty,
    lower: -tolerance,
    upper: tolerance,
  });
  return within ? probability : nonconforming;
}

const QUANTITY_ORDER = { height: 0, length: 1, centerline: 2 } satisfies Record<
  (typeof QUANTITIES)[number],
  number
>;

function frontToRear({ dimension: a }: Compared, { dimension: b }: Compared): number {
  const section = (one: RecordedDimension) => (one.section === null ? 3 : SECTIONS.indexOf(one.section));
  return (
    QUANTITY_ORDER[a.quantity] - QUANTITY_ORDER[b.quantity] ||
    (a.quantity === 'length' ? section(a) - section(b) : (a.station ?? 0) - (b.station ?? 0)) ||
    inOrder(a.point, b.point) ||
    (a.side ?? '').localeCompare(b.side ?? '')
  );
}
