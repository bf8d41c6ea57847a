import type { Learned, RoundVerdict } from '@/lib/assess';
import type { Viewer } from '@/lib/identity';
import * as refresh from '@/lib/refresh';
import type { Dated, ShopFigures } from '@/lib/refresh';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { demand, may } from './may';
import { LEAST_HANDS } from './own-habits';
import { heldTo, within } from './own-rounds';

/** Stands in for a band of the shop that would be a colleague's figure. */
const WITHHELD = {
  sd: null,
  df: null,
  low: null,
  high: null,
  why: `The shop’s band is shown where ${LEAST_HANDS} technicians or more measured: with fewer it would be a colleague’s.`,
};

/** Figures of the gauges, of the shop as a whole, and of those technicians whom the viewer may see. */
export async function currentFigures(viewer: Viewer): Promise<(Dated & { figures: ShopFigures }) | null> {
  const fit = await refresh.currentFigures(viewer.shop.id);
  if (fit === null || may(viewer, 'see everybody’s figures')) return fit;
  const { technicians: hands, shop } = fit.figures;
  const technicians = hands.filter(({ technician }) => technician === viewer.code);
  const band = hands.length < LEAST_HANDS ? { repeatability: WITHHELD, setting: WITHHELD } : shop;
  return { ...fit, figures: { ...fit.figures, technicians, shop: band } };
}

/** The figures of everybody. @throws Refused */
export async function everybodysFigures(viewer: Viewer): Promise<(Dated & { figures: ShopFigures }) | null> {
  demand(viewer, 'see everybody’s figures');
  return refresh.currentFigures(viewer.shop.id);
}

/**
 * What the shop has learned, for working on one job: of a technician's job only the hands that took part in it,
 * without whom no verdict on its rounds can be explained.
 */
export async function currentLearned(
  viewer: Viewer,
  job: string,
): Promise<(Dated & { learned: Learned }) | null> {
  const fit = await refresh.currentLearned(viewer.shop.id);
  if (fit === null || may(viewer, 'see everybody’s figures')) return fit;
  const row = await store.getJobRow(viewer.shop.id, job);
  const hands = new Set(row?.technicians.includes(viewer.code) === true ? row.technicians : [viewer.code]);
  const technicians = Object.fromEntries(
    Object.entries(fit.learned.technicians).filter(([code]) => hands.has(code)),
  );
  return { ...fit, learned: { ...fit.learned, technicians } };
}

const NO_VERDICTS: readonly (RoundVerdict & { at: number })[] = Object.freeze([]);
const NO_HEIGHTS: readonly store.StoredHeight[] = Object.freeze([]);

/** Verdicts on the rounds that the viewer may see, newest first. */
export async function roundVerdicts(
  viewer: Viewer,
  filter: store.VerdictFilter,
): Promise<readonly (RoundVerdict & { at: number })[]> {
  const held = within(viewer, filter);
  return held === null ? NO_VERDICTS : refresh.roundVerdicts(viewer.shop.id, held);
}

/** Heights with their verdicts; a technician's own alone. */
export async function heightsFor(
  viewer: Viewer,
  filter: store.VerdictFilter,
): Promise<readonly store.StoredHeight[]> {
  const held = within(viewer, filter);
  return held === null ? NO_HEIGHTS : store.heightsFor(viewer.shop.id, held);
}

/** Jobs right first time, by group; by technician only those whom the viewer may see. */
export async function countOutcomes(
  viewer: Viewer,
  grouping: store.OutcomeGrouping,
): Promise<readonly store.OutcomeCount[]> {
  const counts = await store.countOutcomes(viewer.shop.id, grouping);
  const own = heldTo(viewer);
  return grouping === 'technician' && own !== undefined ? counts.filter(({ key }) => key === own) : counts;
}

/** What was foretold of heights and what proved so. It is about the program: names of jobs go to those who see them. */
export async function provedHeights(viewer: Viewer): Promise<readonly store.StoredProof[]> {
  const proofs = await store.provedHeights(viewer.shop.id);
  if (heldTo(viewer) === undefined) return proofs;
  const labels = new Map<string, string>();
  const label = (job: string) => labels.get(job) ?? `job ${labels.set(job, `job ${labels.size + 1}`).size}`;
  return proofs.map((proof) => ({ ...proof, job: label(proof.job) }));
}

/** Has a job that was changed follow at once, or the few that were, and all other figures soon. */
export const followNow = (viewer: Viewer, job?: string): Promise<void> =>
  refresh.followNow(viewer.shop.id, job);

/** Says that figures should follow what was changed. */
export function refreshSoon(viewer: Viewer): void {
  refresh.refreshSoon(viewer.shop.id);
}

/** @throws Refused */
export async function missCosts(viewer: Viewer): Promise<store.MissCost[]> {
  demand(viewer, 'change settings');
  return store.missCosts(viewer.shop.id);
}

/** @throws Refused */
export async function setMissCost(viewer: Viewer, cost: number): Promise<void> {
  demand(viewer, 'change settings');
  await store.setMissCost(viewer.shop.id, { cost }, actorOf(viewer));
}
