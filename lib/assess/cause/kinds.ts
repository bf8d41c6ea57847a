import { MISSETS, type Misset } from './learned';

const NUMBERS = new Map<Misset | 'ordinary', number>(
  (['ordinary', ...MISSETS] as const).map((misset, number) => [misset, number]),
);

/** Number of the way in which a setting is wrong, 0 for an ordinary one. */
export const wayOf = (misset: Misset | 'ordinary'): number => NUMBERS.get(misset) ?? 0;

/** Odd, and far from a power of two, so that its powers spread over 32 bits. */
const SPREAD = 0x9e3779b1;

/**
 * Number of the kind after one more setup. Explanations of one kind take the same sides of the same stations for
 * damaged, and the same settings for wrong in the same way. They differ in sizes alone, which hardly matters for what
 * is said of a height. It is a hash, since only equality is asked for: of three hundred kinds two have the same number
 * once in a hundred thousand steps.
 * @param sides index of the pattern of the body that is met there, 0 at a later setup of the same station.
 */
export const nextKind = (kind: number, sides: number, way: number): number =>
  Math.imul(kind + 1 + 16 * way + sides, SPREAD) ^ (kind >>> 13);
