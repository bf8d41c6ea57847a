import type { IncomingMessage, ServerResponse } from 'node:http';
import { atOneMoment } from '@/lib/store';

/**
 * Makes an answer. Where the request changes nothing, all that is asked for it may be told as of one moment after it
 * came; that moment is over with the answer, for what goes on behind it.
 */
export function asOfOneMoment<Result>(
  { method }: IncomingMessage,
  response: ServerResponse,
  make: () => Result,
): Result {
  if (method !== 'GET') return make();
  return atOneMoment((end) => {
    response.once('close', end);
    return make();
  });
}
