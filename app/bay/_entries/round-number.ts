import { z } from 'zod';

const whole = z.string().regex(/^[1-9]\d{0,8}$/);

/** The number of a round out of the address; null where it cannot be one. */
export const roundNumber = (segment: string): number | null =>
  whole.safeParse(segment).success ? Number(segment) : null;
