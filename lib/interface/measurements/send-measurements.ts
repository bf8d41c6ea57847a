import { measurementFileText } from '@/lib/measure';
import { readingsFor, type JobFilter } from '@/lib/store';
import type { TokenHolder } from '@/lib/store/tokens';
import { byteStream } from '../bytes';

/** The readings of every job that the filter shows, as a measurement file. */
export const sendMeasurements = ({ shop }: TokenHolder, filter: JobFilter): Response =>
  new Response(byteStream(measurementFileText(readingsFor(shop.id, filter))), {
    headers: { 'Content-Type': 'text/csv; charset=utf-8', 'Cache-Control': 'no-store' },
  });
