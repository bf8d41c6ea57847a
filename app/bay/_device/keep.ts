import {
  newDeviceName,
  newEntry,
  recordOf,
  setupLabel,
  type BayHead,
  type Entry,
  type EntryBody,
  type KeptEntry,
} from '@/lib/bay';
import { within, type BayDatabase, type RoundRow } from './database';
import { DoneAlready, NotHere, type Standing, type Whose } from './standing';
import { randomKey } from './random-key';

/** What the device holds of one round. */
export interface HeldRound extends RoundRow {
  kept: KeptEntry[];
  /** On their way. */
  own: Entry[];
}

/** Power may fail: an entry counts as kept when it is on the disk, not in a cache on its way there. */
const ON_DISK = { durability: 'strict' } as const;

/** Takes up a round on this device, with what the shop has told of it so far. */
export async function takeUp(
  database: BayDatabase,
  { who, round }: Whose,
  head: BayHead,
  told: readonly KeptEntry[],
): Promise<void> {
  const work = database.transaction(['rounds', 'kept', 'people'], 'readwrite');
  const [row, person] = await Promise.all([
    work.objectStore('rounds').get([who, round]),
    work.objectStore('people').get(who),
  ]);
  const device = row?.device ?? freeName(person?.device, told);
  if (person === undefined) await work.objectStore('people').put({ device }, who);
  for (const entry of told) await work.objectStore('kept').put(entry, [who, round, entry.id]);
  await work.objectStore('rounds').put(
    {
      // What was finished meanwhile may have been read from a copy of the page.
      head: { ...head, finishedAt: head.finishedAt ?? row?.head.finishedAt ?? null },
      device,
      sequence: Math.max(row?.sequence ?? 0, lastOf(device, told)),
      since: Math.max(row?.since ?? 0, ...told.map(({ id }) => id)),
    },
    [who, round],
  );
  await work.done;
}

const lastOf = (device: string, entries: readonly Entry[]): number =>
  Math.max(0, ...entries.filter((one) => one.device === device).map(({ sequence }) => sequence));

/** The person's usual name for this device, unless another device has the same one in this round. */
function freeName(usual: string | undefined, told: readonly KeptEntry[]): string {
  const taken = new Set(told.map(({ device }) => device));
  let name = usual ?? newDeviceName();
  while (taken.has(name)) name = newDeviceName();
  return name;
}

export async function readHeld(database: BayDatabase, { who, round }: Whose): Promise<HeldRound | null> {
  const look = database.transaction(['rounds', 'kept', 'outbox']);
  const [row, kept, own] = await Promise.all([
    look.objectStore('rounds').get([who, round]),
    look.objectStore('kept').getAll(within(who, round)),
    look.objectStore('outbox').getAll(within(who, round)),
  ]);
  return row === undefined ? null : { ...row, kept, own };
}

/**
 * Keeps entries on the device, all or none. They are made from what stands there in the same transaction.
 * @param make returns what to enter, or throws DoneAlready; it must not wait for anything.
 */
export async function append(
  database: BayDatabase,
  { who, code, round }: Whose,
  make: (standing: Standing) => EntryBody[],
): Promise<Entry[]> {
  const work = database.transaction(['rounds', 'kept', 'outbox'], 'readwrite', ON_DISK);
  const outbox = work.objectStore('outbox');
  const [row, kept, own] = await Promise.all([
    work.objectStore('rounds').get([who, round]),
    work.objectStore('kept').getAll(within(who, round)),
    outbox.getAll(within(who, round)),
  ]);
  if (row === undefined) throw new NotHere();
  try {
    const record = recordOf(kept, own, code);
    const used = record.setups.map(({ label }) => label);
    const labels = () => {
      const label = setupLabel(row.head, row.device, used);
      used.push(label);
      return label;
    };
    const before = [...kept, ...own].filter(({ device }) => device === row.device).map(({ at }) => at);
    // Setups stand in the order of their times, so no two entries of a device share one.
    const at = Math.max(Date.now(), ...before.map((time) => time + 1));
    const entries = make({ record, labels }).map((body, index) =>
      newEntry(row.device, row.sequence + index + 1, at + index, randomKey(), body),
    );
    for (const entry of entries) await outbox.put(entry, [who, round, entry.sequence]);
    await work.objectStore('rounds').put({ ...row, sequence: row.sequence + entries.length }, [who, round]);
    await work.done;
    return entries;
  } catch (error) {
    if (error instanceof DoneAlready) work.abort();
    await work.done.catch(() => undefined);
    throw error;
  }
}

/** Takes in what the shop has kept; what of it was on its way is there. */
export async function takeIn(
  database: BayDatabase,
  { who, round }: Whose,
  told: readonly KeptEntry[],
): Promise<void> {
  if (told.length === 0) return;
  const work = database.transaction(['rounds', 'kept', 'outbox'], 'readwrite', ON_DISK);
  const [row, own] = await Promise.all([
    work.objectStore('rounds').get([who, round]),
    work.objectStore('outbox').getAll(within(who, round)),
  ]);
  for (const entry of told) await work.objectStore('kept').put(entry, [who, round, entry.id]);
  const keys = new Set(told.map(({ key }) => key));
  for (const entry of own)
    if (keys.has(entry.key)) await work.objectStore('outbox').delete([who, round, entry.sequence]);
  if (row !== undefined)
    await work
      .objectStore('rounds')
      .put({ ...row, since: Math.max(row.since, ...told.map(({ id }) => id)) }, [who, round]);
  await work.done;
}

/**
 * Starts over from all that the shop has: what it lost of this device's entries since it acknowledged them (its
 * database was put back from a copy) is on its way again. Where another device turns out to go by the same name, or
 * the numbers do not follow on, what is on its way goes under a new name, from 1 on.
 */
export async function startOver(
  database: BayDatabase,
  { who, round }: Whose,
  all: readonly KeptEntry[],
): Promise<void> {
  const work = database.transaction(['rounds', 'kept', 'outbox'], 'readwrite', ON_DISK);
  const outbox = work.objectStore('outbox');
  const [row, kept, own] = await Promise.all([
    work.objectStore('rounds').get([who, round]),
    work.objectStore('kept').getAll(within(who, round)),
    outbox.getAll(within(who, round)),
  ]);
  if (row === undefined) return;
  const there = new Set(all.map(({ key }) => key));
  const mine = [...kept.filter(({ device }) => device === row.device).map(plain), ...own];
  const ways = mine.filter(({ key }) => !there.has(key)).sort((a, b) => a.sequence - b.sequence);
  const last = lastOf(row.device, all);
  const known = new Set(mine.map(({ key }) => key));
  const shared = all.some(({ device, key }) => device === row.device && !known.has(key));
  const follows = ways.every(({ sequence }, at) => sequence === last + at + 1);
  const device = shared || !follows ? freeName(undefined, all) : row.device;
  const again = device === row.device ? ways : ways.map((one, at) => ({ ...one, device, sequence: at + 1 }));
  await work.objectStore('kept').delete(within(who, round));
  await outbox.delete(within(who, round));
  for (const entry of all) await work.objectStore('kept').put(entry, [who, round, entry.id]);
  for (const entry of again) await outbox.put(entry, [who, round, entry.sequence]);
  const since = Math.max(0, ...all.map(({ id }) => id));
  const sequence = Math.max(device === row.device ? last : 0, lastOf(device, again));
  await work.objectStore('rounds').put({ ...row, device, sequence, since }, [who, round]);
  await work.done;
}

const plain = ({ key, device, sequence, at, body }: KeptEntry): Entry => ({
  key,
  device,
  sequence,
  at,
  body,
});
