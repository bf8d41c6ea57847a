import type { Actor, ReadingPlace, ShopId } from '@/lib/store/types';
import { reviseReading } from './revise/revise-reading';

/**
 * Leaves a reading out of every figure, with a reason and in the actor's name. It stays on record, every figure
 * can tell how many were left out, and it can be included again. The times of its setup and job stay as they were.
 * @throws RangeError where there is no such reading or person, no reason, or it is excluded already.
 */
export function excludeReading(
  shop: ShopId,
  { reason, ...place }: ReadingPlace & { reason: string },
  actor: Actor,
): Promise<void> {
  const from: Parameters<typeof reviseReading>[2]['from'] = ({ value, excluded }, name) => {
    if (excluded) throw new RangeError(`${name} is excluded already.`);
    return { value, excluded: true };
  };
  return reviseReading(shop, place, { action: 'excluded', reason, from }, actor);
}

/**
 * Lets an excluded reading count again, with a reason and in the actor's name.
 * @throws RangeError where there is no such reading or person, no reason, or it counts already.
 */
export function includeReading(
  shop: ShopId,
  { reason, ...place }: ReadingPlace & { reason: string },
  actor: Actor,
): Promise<void> {
  const from: Parameters<typeof reviseReading>[2]['from'] = ({ value, excluded }, name) => {
    if (!excluded) throw new RangeError(`${name} counts already.`);
    return { value, excluded: false };
  };
  return reviseReading(shop, place, { action: 'included', reason, from }, actor);
}
