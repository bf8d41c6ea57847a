import pino, { type DestinationStream, type Logger } from 'pino';
import { told } from './told';

export const LOG_LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'silent'] as const;

const held = globalThis as typeof globalThis & { rehangLog?: Logger };

/** From `REHANG_LOG`; what is no level is `info`. */
export function logLevel(given: string | undefined = process.env.REHANG_LOG): string {
  return (LOG_LEVELS as readonly (string | undefined)[]).includes(given) && given !== undefined
    ? given
    : 'info';
}

/** One JSON object a line; an error never with its message (`told`). */
export function makeLog(destination?: DestinationStream): Logger {
  const options = {
    level: logLevel(),
    base: { process: process.pid },
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label: string) => ({ level: label }) },
    serializers: { err: told },
  };
  // Programs of ours say what they found on standard output.
  return pino(options, destination ?? pino.destination({ dest: 2, sync: true }));
}

/** The log of this process, on standard error. */
const log = (): Logger => (held.rehangLog ??= makeLog());

/** Why nobody was let in. */
export type SignInRefusal = 'wrong' | 'wrong code' | 'too many attempts';

/**
 * Everything that is logged, with all that is logged of it: numbers, words of the program's own and row numbers.
 * No codes or names of people, no sign-in names, no addresses, no job numbers, no names of files.
 */
export const note = {
  started: () => log().info('started'),
  /** Whoever can reach the port can sign in to the demo shop, or read along. */
  openTo: (what: 'the demo shop has public passwords' | 'passwords travel without https') =>
    log().warn({ what }, 'other machines can reach this one'),
  stopping: () => log().info('stopping'),
  stopped: (left: { running: number }) => log().info(left, 'stopped'),
  signInRefused: (why: SignInRefusal) => log().warn({ why }, 'sign-in refused'),
  tokenRefused: (why: 'unknown' | 'scope' | 'too many requests', token: number | null) =>
    log().warn({ why, ...(token !== null && { token }) }, 'token refused'),
  requestFailed: (of: { route: string; method: string; kind: string }, error: unknown) =>
    log().error({ ...of, ...told(error) }, 'request failed'),
  loaded: (of: { shop: number; bytes: number; readings: number; added: number; seconds: number }) =>
    log().info(of, 'file loaded'),
  fileRefused: (of: { shop: number; bytes: number; faults: number }) => log().info(of, 'file refused'),
  fileFailed: (of: { task?: 'check' | 'store' }, error: unknown) =>
    log().error({ ...of, ...told(error) }, 'file failed'),
  refreshed: (of: { shop: number; seconds: number }) => log().info(of, 'figures brought up to date'),
  refreshFailed: (of: { shop: number }, error: unknown) =>
    log().error({ ...of, ...told(error) }, 'figures could not be brought up to date'),
  reportMade: (of: { shop: number; report: number; seconds: number }) => log().info(of, 'report made'),
  reportFailed: (of: { shop: number; report: number | null }, error: unknown) =>
    log().error({ ...of, ...told(error) }, 'report failed'),
  /** Of the framework or a package: said on the console, which is of the program’s own words. */
  said: (level: 'info' | 'warn' | 'error', parts: readonly unknown[]) => {
    const error = parts.find((part) => part instanceof Error);
    const words = parts.filter((part) => typeof part === 'string').join(' ');
    log()[level]({ ...(error !== undefined && told(error)) }, words.slice(0, 300));
  },
};
