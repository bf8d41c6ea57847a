import { DEFAULT_MISS_COST, type Learned } from '@/lib/assess';
import { startingPoint } from '@/lib/assess/cause/learned';
import type { BayHead, Entry, KeptEntry } from '@/lib/bay';
import type { Viewer } from '@/lib/identity';
import type { GaugeKind } from '@/lib/measure';
import * as refresh from '@/lib/refresh';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { may } from './may';
import { LEAST_HANDS } from './own-habits';

export { OutOfOrder } from '@/lib/store';

/** What a device keeps of the shop, so that it can go on without a connection. */
export interface BayKnowledge {
  /** What was learned, with the viewer's own hand alone. */
  learned: Learned;
  /** What missing damage costs, as a multiple of a needless re-hang. */
  missCost: number;
  gauges: { tag: string; kind: GaugeKind | null; fixedMark: number | null; inService: boolean }[];
  /** Codes of those whom the viewer may enter for. */
  hands: string[];
}

/** Rounds that are open, and those finished in the last days that the viewer may see; those begun last come first. */
export async function listBayRounds(viewer: Viewer): Promise<store.BayRoundRow[]> {
  const rows = await store.listBayRounds(viewer.shop.id, viewer.code);
  return may(viewer, 'see every round') ? rows : rows.filter((row) => row.finishedAt === null || row.mine);
}

/**
 * Begins a round in the viewer's name, or joins the open one of the same job, stage and attempt.
 * @throws RangeError where that cannot be.
 */
export const beginBayRound = (viewer: Viewer, round: store.NewBayRound): Promise<number> =>
  store.beginBayRound(viewer.shop.id, round, viewer.code, actorOf(viewer));

/** Null where there is no such round, or it is finished and the viewer took no part in it. */
export async function getBayRound(viewer: Viewer, id: number): Promise<BayHead | null> {
  return (await seenBy(viewer, id)) === 'all' ? store.getBayRound(viewer.shop.id, id) : null;
}

/**
 * What was entered in a round, in the order of arrival, after the entry `since`. Of a finished round in which the
 * viewer took no part only what they sent late themselves.
 */
export async function bayEntries(viewer: Viewer, id: number, since: number): Promise<KeptEntry[]> {
  const seen = await seenBy(viewer, id);
  if (seen === null) return [];
  return store.bayEntries(viewer.shop.id, id, since, seen === 'own' ? viewer.code : undefined);
}

/**
 * Keeps entries in the viewer's name, in order, each once, with what they do to the measurements; also after the
 * round was finished. What contradicts is kept with the reason.
 * @throws OutOfOrder where an entry does not follow on the last one of its device: those before it are kept.
 * @throws RangeError where there is no such round.
 */
export const takeBayEntries = (viewer: Viewer, id: number, entries: readonly Entry[]): Promise<void> =>
  store.takeBayEntries(
    viewer.shop.id,
    id,
    entries,
    { by: viewer.code, forOthers: mayEnterForOthers(viewer) },
    actorOf(viewer),
  );

/** Has figures follow what was entered: at the end of a round at once, its verdict first, else when entering pauses. */
export async function refreshAfterEntries(
  viewer: Viewer,
  id: number,
  entries: readonly Entry[],
): Promise<void> {
  if (entries.length === 0) return;
  const finished = entries.some(({ body }) => body.kind === 'finish');
  const round = finished ? await store.getBayRound(viewer.shop.id, id) : null;
  if (round === null) refresh.refreshAfterPause(viewer.shop.id);
  else await refresh.followNow(viewer.shop.id, round.job);
}

/** True where the shop has such a round: entries are taken whoever may see it. */
export const hasBayRound = async (viewer: Viewer, id: number): Promise<boolean> =>
  (await seenBy(viewer, id)) !== null;

const mayEnterForOthers = (viewer: Viewer): boolean => may(viewer, 'see every round');

async function seenBy(viewer: Viewer, id: number): Promise<'all' | 'own' | null> {
  const standing = await store.bayStanding(viewer.shop.id, id, viewer.code);
  if (standing === null) return null;
  return standing.tookPart || may(viewer, 'see every round') ? 'all' : 'own';
}

/** What the viewer's device is to know: no colleague's figure, and no colleague's code but for who may enter for them. */
export async function bayKnowledge(viewer: Viewer): Promise<BayKnowledge> {
  const shop = viewer.shop.id;
  const [fit, gauges, people] = await Promise.all([
    refresh.currentLearned(shop),
    store.listGauges(shop),
    mayEnterForOthers(viewer) ? store.listPeople(shop) : [],
  ]);
  const hands = people.filter(({ active }) => active).map(({ code }) => code);
  return {
    learned: withOwnHand(fit?.learned ?? startingPoint(), viewer),
    missCost: viewer.shop.missCost ?? DEFAULT_MISS_COST,
    gauges: gauges
      .filter(({ state }) => state !== 'retired')
      .map(({ tag, kind, fixedMark, state }) => ({
        tag,
        kind,
        fixedMark,
        inService: state === 'in-service',
      })),
    hands: [viewer.code, ...hands.filter((code) => code !== viewer.code)],
  };
}

/** With too few hands, what is assumed of a new one would be what one colleague shows. */
function withOwnHand(learned: Learned, viewer: Viewer): Learned {
  const own = learned.technicians[viewer.code];
  const few = Object.keys(learned.technicians).length < LEAST_HANDS;
  return {
    ...learned,
    technicians: own === undefined ? {} : { [viewer.code]: own },
    ...(few && !may(viewer, 'see everybody’s figures') && { newTechnician: startingPoint().newTechnician }),
  };
}
