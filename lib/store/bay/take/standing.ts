import { dimensionName, type Dimension } from '@/lib/measure';
import type { DimensionRef } from '@/lib/bay';
import { dimensionColumns, dimensionOf, namedValue } from '@/lib/store/sheets/dimension-row';
import { storedSide } from '@/lib/store/sql/side';
import type { Hung } from './hang';
import type { Taking } from './taking';

export interface SheetDimension extends Dimension {
  id: number;
}

/** The sheet's own dimension; null where the sheet does not have it (any more). */
export async function dimensionFor(
  { queries, round }: Taking,
  ref: DimensionRef,
): Promise<SheetDimension | null> {
  const { quantity, point } = ref;
  const key = {
    sheetId: round.sheet.id,
    quantity,
    point,
    side: storedSide(ref.side),
    named: namedValue(ref),
  };
  const row = await queries.dimension.findUnique({
    where: { sheetId_quantity_point_side_named: key },
    select: { id: true, ...dimensionColumns },
  });
  return row && { ...dimensionOf(row), id: row.id };
}

export const noSuchDimension = ({ round }: Taking, ref: DimensionRef): string =>
  `Sheet ${round.sheet.name ?? ''} has no ${dimensionName(ref)} of ${ref.nominal} mm.`;

/** How a reading stands in the measurements now: its last revision. */
export interface Standing {
  value: number;
  excluded: boolean;
}

/**
 * What the measurements hold for a reading, looked up by keys alone.
 * @returns null where nothing stands there; a sentence where the label stands for another hanging by now.
 */
export async function standingOf(
  { queries, shop, round }: Taking,
  hung: Hung,
  dimensionId: number,
  repeat: number,
): Promise<Standing | string | null> {
  const job = await queries.job.findUnique({
    where: { shopId_number: { shopId: shop, number: round.job } },
    select: { id: true },
  });
  if (job === null) return null;
  const setup = await queries.setup.findUnique({
    where: { jobId_label: { jobId: job.id, label: hung.setup } },
    select: {
      id: true,
      round: { select: { stage: true, attempt: true } },
      technician: { select: { code: true } },
      gauge: { select: { tag: true } },
    },
  });
  if (setup === null) return null;
  const { stage, attempt } = setup.round;
  const same = stage === round.stage && attempt === round.attempt && setup.gauge.tag === hung.gauge;
  if (!same || setup.technician.code !== hung.technician) return anotherHanging(round.job, hung.setup);
  return queries.reading.findFirst({
    where: { setupId: setup.id, dimensionId, repeat },
    orderBy: { revision: 'desc' },
    select: { value: true, excluded: true },
  });
}

export const anotherHanging = (job: string, setup: string): string =>
  `Setup ${setup} stands for another hanging in job ${job}. Hang the gauge again.`;
