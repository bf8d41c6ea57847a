import { notFound } from 'next/navigation';
import { z } from 'zod';

const whole = z.string().regex(/^[1-9]\d{0,8}$/);

/** The number of a trial out of the address; null where it cannot be one. */
export function trialNumber(segment: string): number | null {
  return whole.safeParse(segment).success ? Number(segment) : null;
}

/** The same on a page: what cannot be a number is a page that does not exist. */
export function trialOfPage(segment: string): number {
  const id = trialNumber(segment);
  if (id === null) notFound();
  return id;
}
