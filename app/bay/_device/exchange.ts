import type { KeptEntry } from '@/lib/bay';
import type { BayDatabase } from './database';
import { readHeld, startOver, takeIn } from './keep';
import type { Whose } from './standing';

/** How it went: `gone` where nothing waits any more, `more` where something still does. */
export type Outcome =
  | { is: 'gone' | 'more' | 'no-connection' | 'sign-in' }
  /** The shop answered that it does not take them, in a sentence. */
  | { is: 'refused'; why: string };

/** A line that hangs is no line, ms. */
const PATIENCE = 15_000;
/** Sent at once; a refusal for size halves it. */
const MOST = 100;

/** One exchange with the shop: what waits goes there, in order, and what is new there comes here. */
export async function exchange(database: BayDatabase, whose: Whose, most: number = MOST): Promise<Outcome> {
  const held = await readHeld(database, whose);
  if (held === null) return { is: 'gone' };
  const sent = held.own.slice(0, most);
  const answer = await ask(whose.round, held.since, sent.length > 0 ? sent : null);
  if (!(answer instanceof Response)) {
    await takeIn(database, whose, answer);
    const left = (await readHeld(database, whose))?.own ?? [];
    if (left.length === 0) return { is: 'gone' };
    // What was sent and did not come back is still there: not to be asked again at once.
    const came = sent.length === 0 || left[0]?.key !== sent[0]?.key;
    return { is: came ? 'more' : 'no-connection' };
  }
  if (answer.status === 409) return startAgain(database, whose);
  if (answer.status === 413 && most > 1) return exchange(database, whose, Math.ceil(most / 2));
  return outcomeOf(answer);
}

/** The shop misses entries before these: from all that it has, this device finds out which. */
async function startAgain(database: BayDatabase, whose: Whose): Promise<Outcome> {
  const all = await ask(whose.round, 0, []);
  if (all instanceof Response) return outcomeOf(all);
  await startOver(database, whose, all);
  const held = await readHeld(database, whose);
  const again = await ask(whose.round, held?.since ?? 0, held?.own ?? []);
  if (again instanceof Response) return outcomeOf(again);
  await takeIn(database, whose, again);
  return { is: 'gone' };
}

/** What the shop tells, or the answer by which it does not. Without entries it is only asked what is new. */
async function ask(
  round: number,
  since: number,
  entries: readonly unknown[] | null,
): Promise<KeptEntry[] | Response> {
  const place = `/bay/${round}/entries`;
  const common = { redirect: 'error', cache: 'no-store', signal: AbortSignal.timeout(PATIENCE) } as const;
  try {
    const response =
      entries === null
        ? await fetch(`${place}?since=${since}`, common)
        : await fetch(place, {
            ...common,
            method: 'POST',
            headers: { 'Content-Type': 'application/json' },
            body: JSON.stringify({ since, entries }),
          });
    if (!response.ok) return response;
    const told = ((await response.json()) as { entries?: unknown }).entries;
    return Array.isArray(told) ? (told as KeptEntry[]) : Response.error();
  } catch {
    // No line, or somebody else's answer in its place, as networks for guests give.
    return Response.error();
  }
}

async function outcomeOf(answer: Response): Promise<Outcome> {
  if (answer.status === 401) return { is: 'sign-in' };
  if (answer.status === 0 || answer.status >= 500) return { is: 'no-connection' };
  return { is: 'refused', why: (await answer.text().catch(() => '')).slice(0, 500) };
}
