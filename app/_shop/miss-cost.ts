import { DEFAULT_MISS_COST } from '@/lib/assess';
import type { Shop } from '@/lib/access';

/** What missing damage costs against a needless re-hang in this shop: what the manager has set, or the default. */
export const missCostOf = ({ missCost }: Pick<Shop, 'missCost'>): number => missCost ?? DEFAULT_MISS_COST;

/** The probability from which a height is called likely gauge, or neither. */
export const sureFrom = (missCost: number): number => missCost / (1 + missCost);
