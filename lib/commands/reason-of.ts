import { faultList } from '@/lib/measure';
import { databaseFailure, StoreConflict } from '@/lib/store';
import { conflictFaults } from './load-summary';

const REASONS: Record<string, (path: string) => string> = {
  ENOENT: (path) => `There is no file ${path}.`,
  EISDIR: (path) => `${path} is a folder. Name the files in it.`,
  EACCES: (path) => `${path} may not be read by this user.`,
};

/** Nothing of a file was stored; the message says why. */
export class Refused extends Error {}

/** Why a file could not be read or stored, in words and without a stack. */
export function reasonOf(error: unknown, path: string): string {
  if (error instanceof Refused) return error.message;
  if (error instanceof StoreConflict) return faultList(conflictFaults(error.conflicts)).join('\n');
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
  return REASONS[code]?.(path) ?? inWords(error);
}

/** What went wrong, for a person: of a library's message the last line, which names the cause. */
export function inWords(error: unknown): string {
  const failure = databaseFailure(error);
  if (failure !== null) return failure;
  const message = error instanceof Error ? error.message : String(error);
  return message.trim().split('\n').at(-1)?.trim() ?? '';
}
