import { Prisma } from '@/lib/store/generated/sqlite/client';
import { inChunks } from '@/lib/store/save/in-chunks';
import type { HeightRecord } from '@/lib/store/types';
import { among } from './among';
import { insertRows, type Cell } from './insert-rows';
import { storedSide } from './side';
import type { Statements } from './statements';

/** Where a height stands in a round. */
type NamedHeight = Pick<HeightRecord, 'setup' | 'point' | 'side'>;

/** What is known of the setup of a height. */
export interface Hung {
  hungAt: Date;
}

interface Place extends Hung {
  roundId: number;
  setup: string;
  setupId: number;
  dimensionId: number;
  point: string;
  side: string;
}

/** A table with one row for a height of a round: `setupId`, `dimensionId`, `roundId`, then columns of its own. */
export interface HeightTable<Height extends NamedHeight> {
  name: 'HeightVerdict' | 'HeightProof';
  columns: readonly string[];
  cells: (height: Height, hung: Hung) => Cell[];
}

/** Has a table hold these heights of these rounds, and no others of them. Heights that the shop does not have are left out. */
export async function replaceHeights<Height extends NamedHeight>(
  within: Statements,
  { name, columns, cells }: HeightTable<Height>,
  rounds: readonly { id: number; heights: readonly Height[] }[],
): Promise<void> {
  const places = await inChunks(
    rounds.flatMap(({ id, heights }) => (heights.length === 0 ? [] : [id])),
    (ids) => within.$queryRaw<Place[]>`
      SELECT s."roundId", s."label" AS "setup", s."hungAt", o."setupId", o."dimensionId", d."point", d."side"
      FROM "Setup" s JOIN "Observation" o ON o."setupId" = s."id" JOIN "Dimension" d ON d."id" = o."dimensionId"
      WHERE d."quantity" = 'height' AND s."roundId" ${among(ids)}`,
  );
  const found = new Map(places.map((row) => [placeName(row.roundId, row), row]));
  await inChunks(
    rounds.map(({ id }) => id),
    async (ids) => {
      await within.$executeRaw`DELETE FROM ${Prisma.raw(`"${name}"`)} WHERE "roundId" ${among(ids)}`;
      return [];
    },
  );
  const rows = rounds.flatMap(({ id, heights }) =>
    heights.flatMap((height): Cell[][] => {
      const place = found.get(placeName(id, { ...height, side: storedSide(height.side) }));
      return place === undefined ? [] : [[place.setupId, place.dimensionId, id, ...cells(height, place)]];
    }),
  );
  await insertRows(within, name, ['setupId', 'dimensionId', 'roundId', ...columns], rows);
}

const placeName = (round: number, { setup, point, side }: { setup: string; point: string; side: string }) =>
  JSON.stringify([round, setup, point, side]);
