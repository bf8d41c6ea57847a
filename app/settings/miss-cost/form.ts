import { z } from 'zod';
import { MISS_COST_RANGE } from '@/lib/access';

/** The form that sets what missing damage costs. */
export const missCostForm = z.object({
  cost: z.coerce.number().min(MISS_COST_RANGE.least).max(MISS_COST_RANGE.most),
});
