import { readingOf, type DimensionRef } from '@/lib/bay';
import type { Reading } from '@/lib/measure';
import { VALUE_RANGE } from '@/lib/measure/file/limits';
import { reviseWithin } from '@/lib/store/readings/revise/revise-reading';
import { layOut } from '@/lib/store/save/lay-out';
import { readKnown } from '@/lib/store/save/read-known';
import { writeBatch } from '@/lib/store/save/write-batch';
import type { Conflict } from '@/lib/store/types';
import { hungAs, type Hung } from './hang';
import { anotherHanging, dimensionFor, noSuchDimension, standingOf, type SheetDimension } from './standing';
import type { Taking } from './taking';

interface Read {
  setup: string;
  dimension: DimensionRef;
  repeat: number;
  /** As read, mm. */
  value: number;
}

const ANOTHER_VALUE = 'Another value was entered for the same reading.';
export const EXCLUDED = 'This reading was excluded. Include it again where readings are revised.';

/** @returns why the reading was not taken; null where it was, or stands there already. */
export async function takeReading(taking: Taking, read: Read & { at: number }): Promise<string | null> {
  const place = await placeOf(taking, read);
  if (typeof place === 'string') return place;
  const { hung, dimension, standing } = place;
  if (hung.conflict !== null) return hung.conflict;
  if (standing === null) return addReading(taking, hung, dimension, read);
  if (standing.excluded) return EXCLUDED;
  return standing.value === read.value ? null : ANOTHER_VALUE;
}

/** @returns why the reading was not corrected; null where it was, or stands so already. */
export async function takeCorrection(
  taking: Taking,
  read: Read & { from: number; reason: string },
): Promise<string | null> {
  const place = await placeOf(taking, read);
  if (typeof place === 'string') return place;
  const { hung, dimension, standing } = place;
  if (hung.conflict !== null) return hung.conflict;
  if (standing === null) return 'There is no such reading to correct.';
  if (standing.excluded) return EXCLUDED;
  if (standing.value === read.value) return null;
  if (standing.value !== read.from)
    return 'The reading had another value by then than the one it was corrected from.';
  return correct(taking, dimension, read);
}

/** Where a reading belongs, and what stands there; or why it belongs nowhere. */
export async function placeOf(taking: Taking, { setup, dimension: ref, repeat, value }: Read) {
  const hung = await hungAs(taking, setup);
  if (hung === null) return `Setup ${setup} was not hung in this round.`;
  const dimension = await dimensionFor(taking, ref);
  if (dimension === null) return noSuchDimension(taking, ref);
  const { low, high } = VALUE_RANGE[dimension.quantity];
  if (value < low || value > high)
    return `${value} mm is no ${dimension.quantity} on a vehicle: it lies between ${low} and ${high} mm.`;
  const standing = await standingOf(taking, hung, dimension.id, repeat);
  if (typeof standing === 'string') return standing;
  return { hung, dimension, standing };
}

/** Stores a reading with its collapsed form, as if it were the one line of a file. */
export async function addReading(
  taking: Taking,
  hung: Hung,
  dimension: SheetDimension,
  { repeat, value, at }: Read & { at: number },
): Promise<string | null> {
  const { queries, shop, round, personId, now } = taking;
  const { id: _, ...stated } = dimension;
  const head = { ...round, sheet: { name: round.sheet.name ?? '' } };
  const setup = { label: hung.setup, gauge: hung.gauge, gaugeKind: hung.gaugeKind, hand: hung.technician };
  // A clock that runs ahead does not put a reading into the future.
  const line = readingOf(head, setup, stated, { repeat, value, at: Math.min(at, now.getTime()) });
  const known = await readKnown(queries, shop, [line]);
  const kind = known.gauges.get(hung.gauge)?.kind ?? null;
  const { batch, conflicts } = layOut([{ ...line, gaugeKind: kind ?? hung.gaugeKind }], known);
  const [first] = conflicts;
  if (first !== undefined) return inWords(first, line);
  await writeBatch(queries, shop, { batch, known }, { personId, enteredAt: now });
  return null;
}

/** A contradiction with what came from elsewhere, without the code of anybody. */
function inWords({ column, reason }: Conflict, { job, stage, attempt, setup }: Reading): string {
  if (column === 'sheet') return `Job ${job} is measured against another sheet by now.`;
  if (column === 'clearance_mm')
    return `Round ${stage} ${attempt} of job ${job} is measured with another clearance by now.`;
  if (['setup', 'technician', 'gauge'].includes(column)) return anotherHanging(job, setup);
  return reason;
}

/** Adds a revision to the reading, with its reason. */
export async function correct(
  { queries, shop, round, actor }: Taking,
  { quantity, point, side, nominal }: SheetDimension,
  { setup, repeat, value, reason }: Read & { reason: string },
): Promise<null> {
  const place = { job: round.job, setup, quantity, point, side, nominal, repeat };
  const from = (standing: { value: number; excluded: boolean }) => ({ ...standing, value });
  await reviseWithin(queries, shop, place, { action: 'corrected', reason, from }, actor);
  return null;
}
