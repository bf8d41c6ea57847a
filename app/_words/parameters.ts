import { notFound } from 'next/navigation';
import { z } from 'zod';

/** Labels of jobs, technicians and gauges as the measurement file allows them. */
const label = z.string().trim().min(1).max(80);

/** A label out of the address; anything that cannot be one is a page that does not exist. */
export function labelFrom(segment: string): string {
  let text: string;
  try {
    text = decodeURIComponent(segment);
  } catch {
    notFound();
  }
  const parsed = label.safeParse(text);
  if (!parsed.success) notFound();
  return parsed.data;
}
