import { inChunks } from '@/lib/store/save/in-chunks';
import type { ShopId } from '@/lib/store/types';
import { among } from './among';
import type { Statements } from './statements';

interface NamedRound {
  job: string;
  stage: string;
  attempt: number;
}

export interface RoundRow extends NamedRound {
  id: number;
  startedAt: Date;
}

/** Each of these that belongs to a round, with its row; those of rounds that the shop does not have are left out. */
export async function withRounds<Of extends NamedRound>(
  within: Statements,
  shop: ShopId,
  all: readonly Of[],
): Promise<[Of, RoundRow][]> {
  const rows = await inChunks(
    [...new Set(all.map(({ job }) => job))],
    (numbers) => within.$queryRaw<RoundRow[]>`
      SELECT r."id", j."number" AS "job", r."stage", r."attempt", r."startedAt"
      FROM "Round" r JOIN "Job" j ON j."id" = r."jobId"
      WHERE j."shopId" = ${shop} AND j."number" ${among(numbers)}`,
  );
  const found = new Map(rows.map((row) => [nameOf(row), row]));
  return all.flatMap((one): [Of, RoundRow][] => {
    const row = found.get(nameOf(one));
    return row === undefined ? [] : [[one, row]];
  });
}

const nameOf = ({ job, stage, attempt }: NamedRound): string => JSON.stringify([job, stage, attempt]);
