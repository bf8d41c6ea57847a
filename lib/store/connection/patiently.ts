import { isDriverAdapterError } from '@prisma/driver-adapter-utils';

const PAUSE_MS = 20;

/**
 * Runs a write, trying again while another process holds the database. The driver's own wait would stop
 * the whole process, pages included; this one does not. A statement that found the database busy has
 * changed nothing, so it can be run again.
 * @throws Error in words when the database is still held after `patience` ms.
 */
export async function patiently<Result>(write: () => Promise<Result>, patience = 60_000): Promise<Result> {
  const until = Date.now() + patience;
  for (;;) {
    try {
      return await write();
    } catch (error) {
      if (!isBusy(error)) throw error;
      if (Date.now() > until) {
        throw new Error(
          'Another program has held the database for too long; nothing was stored. Try again.',
          {
            cause: error,
          },
        );
      }
      await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    }
  }
}

/** Whether a statement was refused because somebody else holds the database. */
export const isBusy = (error: unknown): boolean =>
  isDriverAdapterError(error) && error.cause.kind === 'SocketTimeout';
