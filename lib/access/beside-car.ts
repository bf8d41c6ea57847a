import { placeOf, planOf, recordOf, type EquipmentCheck, type Step } from '@/lib/bay';
import type { Viewer } from '@/lib/identity';
import type { Stage } from '@/lib/measure';
import * as store from '@/lib/store';
import { bayEntries, getBayRound } from './bay';

/** What a round that was measured beside the car has on record besides its readings. */
export interface BesideCar {
  id: number;
  stage: Stage;
  attempt: number;
  finishedAt: number | null;
  checks: { check: EquipmentCheck; ok: boolean; note: string | null }[];
  /** Place null: the whole step. */
  leftOut: { step: Step; place: string | null; reason: string }[];
  /** Readings for which two values were entered, and nobody said which counts. */
  unsettled: number;
}

/** Of a job's rounds those that were measured beside the car and that the viewer may see. */
export async function besideCar(viewer: Viewer, job: string): Promise<BesideCar[]> {
  const ids = await store.bayRoundsOfJob(viewer.shop.id, job);
  const rounds = await Promise.all(ids.map((id) => roundBesideCar(viewer, id)));
  return rounds.filter((round) => round !== null);
}

async function roundBesideCar(viewer: Viewer, id: number): Promise<BesideCar | null> {
  const head = await getBayRound(viewer, id);
  if (head === null) return null;
  const record = recordOf(await bayEntries(viewer, id, 0), [], viewer.code);
  const plan = planOf(head.sheet);
  const { stage, attempt, finishedAt } = head;
  return {
    id,
    stage,
    attempt,
    finishedAt,
    checks: [...record.checks].map(([check, { ok, note }]) => ({ check, ok, note })),
    leftOut: record.skipped.map(({ step, place, reason }) => ({
      step,
      reason,
      place: place === null ? null : (placeOf(plan, place)?.name ?? place),
    })),
    unsettled: record.contradictions.length,
  };
}
