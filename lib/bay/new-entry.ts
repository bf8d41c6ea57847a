import type { Entry, EntryBody } from './entry';
import type { BayHead } from './types';

/** Letters and digits that are not taken for one another when somebody says them. */
const NAMES = 'abcdefghkmnprstuvwxyz23456789';

/** A name for a device that meets the shop for the first time: short, since setups carry it. */
export function newDeviceName(random: () => number = Math.random): string {
  return Array.from({ length: 3 }, () => NAMES[Math.floor(random() * NAMES.length)] ?? 'a').join('');
}

/**
 * Label of the next setup that a device hangs in a round: `a1-4k7p`, after the repair, attempt 1, the fourth of
 * device k7p. No two devices give the same one, so each can go on without a connection.
 */
export function setupLabel(
  head: Pick<BayHead, 'stage' | 'attempt'>,
  device: string,
  known: readonly string[],
): string {
  const start = `${head.stage === 'before' ? 'b' : 'a'}${head.attempt}-`;
  const numbers = known.map((label) =>
    label.startsWith(start) && label.endsWith(device)
      ? Number(label.slice(start.length, label.length - device.length))
      : 0,
  );
  return `${start}${Math.max(0, ...numbers.filter(Number.isInteger)) + 1}${device}`;
}

export const newEntry = (
  device: string,
  sequence: number,
  at: number,
  key: string,
  body: EntryBody,
): Entry => ({
  key,
  device,
  sequence,
  at,
  body,
});
