import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { JobFilter, ShopId } from '@/lib/store/types';
import { searchable } from './searchable';

/** The jobs that a filter shows. */
export function jobWhere(shop: ShopId, filter: JobFilter): Prisma.JobWhereInput {
  const { search, stage, technician, sheet, section, outcome, from, to, jobs } = filter;
  const words = searchable(search ?? '')
    .split(/\s+/)
    .filter((word) => word !== '');
  return {
    shopId: shop,
    ...(words.length > 0 && { AND: words.map((word) => ({ searchText: { contains: word } })) }),
    ...(stage !== undefined && { lastStage: stage }),
    ...(technician !== undefined && { hands: { some: { technician: { code: technician } } } }),
    ...(sheet !== undefined && { sheet: { name: sheet } }),
    ...((section !== undefined || outcome !== undefined) && {
      outcome: {
        ...(section !== undefined && { [`${section}Out`]: { gt: 0 } }),
        ...(outcome !== undefined && { right: outcome === 'unknown' ? null : outcome === 'right' }),
      },
    }),
    ...((from !== undefined || to !== undefined) && {
      openedAt: {
        ...(from !== undefined && { gte: new Date(from) }),
        ...(to !== undefined && { lt: new Date(to) }),
      },
    }),
    ...(jobs !== undefined && { number: { in: [...jobs] } }),
  };
}
