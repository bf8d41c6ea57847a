import type { Actor, ReadingPlace, ShopId } from '@/lib/store/types';
import { reviseReading } from './revise/revise-reading';

/** No length on a vehicle is longer than a hundred metres, mm. */
const LONGEST = 100_000;

/**
 * Puts another value in place of a reading's, with a reason and in the actor's name. The earlier value stays on
 * record, and every figure is made from the new one as if the file had held it.
 * @throws RangeError where there is no such reading or person, no reason, no number, or the value stands already.
 */
export function correctReading(
  shop: ShopId,
  { value, reason, ...place }: ReadingPlace & { value: number; reason: string },
  actor: Actor,
): Promise<void> {
  const from: Parameters<typeof reviseReading>[2]['from'] = (standing, name) => {
    if (!(Math.abs(value) <= LONGEST)) throw new RangeError(`${value} is no reading in millimetres.`);
    if (value === standing.value) throw new RangeError(`${name} is ${value} mm already.`);
    return { ...standing, value };
  };
  return reviseReading(shop, place, { action: 'corrected', reason, from }, actor);
}
