import { createHash } from 'node:crypto';
import { RateLimiterPrisma, RateLimiterRes } from 'rate-limiter-flexible';
import { database } from '@/lib/store/connection/database';

/** Failures that are let pass within `seconds`; then nothing is tried until they have gone by. */
export interface Limit {
  points: number;
  seconds: number;
}

const limiter = (name: string, { points, seconds }: Limit) =>
  new RateLimiterPrisma({
    storeClient: database(),
    tableName: 'attempt',
    keyPrefix: name,
    points,
    duration: seconds,
    clearExpiredByTimeout: false,
  });

/** Keys may be names or addresses of people: only a digest is kept. */
const keyOf = (text: string) => createHash('sha256').update(text).digest('base64url');

/** Seconds to wait before another attempt, or 0 where one is free. */
export async function secondsToWait(name: string, limit: Limit, key: string): Promise<number> {
  const found = await limiter(name, limit).get(keyOf(key));
  return found !== null && found.consumedPoints >= limit.points ? Math.ceil(found.msBeforeNext / 1000) : 0;
}

/**
 * Counts an attempt; one database counts for all processes.
 * @returns seconds to wait where it was one too many, else 0.
 */
export async function countAttempt(name: string, limit: Limit, key: string): Promise<number> {
  try {
    await limiter(name, limit).consume(keyOf(key));
    return 0;
  } catch (error) {
    if (!(error instanceof RateLimiterRes)) throw error;
    return Math.max(1, Math.ceil(error.msBeforeNext / 1000));
  }
}

/** Forgets what was counted, after a success; and everything that has run out. */
export async function forgetAttempts(name: string, limit: Limit, key: string): Promise<void> {
  await limiter(name, limit).delete(keyOf(key));
  await database().attempt.deleteMany({ where: { expire: { lt: new Date() } } });
}
