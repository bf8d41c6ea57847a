import { againstReference, verifyGauge, type GaugeEvent, type GaugeVerdict } from '@/lib/assess/verification';
import type { GaugeKind } from '@/lib/measure';
import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { demand } from './may';

export type { Call, GaugeVerdict } from '@/lib/assess/verification';

/** Gauges belong to the shop: everybody sees them, their state and their bias. */
export const listGauges = (viewer: Viewer) => store.listGauges(viewer.shop.id);
export const getGauge = (viewer: Viewer, tag: string) => store.getGauge(viewer.shop.id, tag);

/** Half width of what a gauge may be off, mm: a tape is read coarser. */
export const allowedError = (kind: GaugeKind | null): number => (kind === 'tape' ? 1 : 0.5);

/** Where a verification came without its uncertainty, mm: a reference length read to a tenth. */
export const ASSUMED_UNCERTAINTY = 0.1;

type VerifiedGauge = store.Gauge & { verifications: store.GaugeVerification[] };

/**
 * What a gauge's verifications show together. A report of a drop and a look that found it bent put it in doubt. Where
 * one that failed is followed by one that passes, it was mended between, and its chart begins anew.
 */
export function gaugeVerdict({ tag, kind, verifications }: VerifiedGauge): GaugeVerdict {
  const story = [...verifications].sort((a, b) => a.at - b.at);
  const measured = story.flatMap(({ at, error, uncertainty }) =>
    error === null ? [] : [{ at, error, uncertainty: uncertainty ?? ASSUMED_UNCERTAINTY }],
  );
  const events = story.flatMap(({ at, error, passed }, index): GaugeEvent[] => {
    if (error === null) return passed ? [] : [{ at, kind: 'dropped' }];
    const next = story.slice(index + 1).find((one) => one.error !== null);
    return Math.abs(error) > allowedError(kind) && !passed && next?.passed === true
      ? [{ at: at + 1, kind: 'adjusted' }]
      : [];
  });
  return verifyGauge(tag, measured, events, { limit: allowedError(kind) });
}

export interface VerificationEntry {
  kind: 'reference-length' | 'check-standard';
  reference: number;
  /** Standard uncertainty of the reference, mm. */
  uncertainty: number;
  readings: readonly number[];
  note: string | null;
}

/** A reading is never known better than this, mm: half the last place of a gauge that shows tenths, as an sd. */
const FINEST = 0.05 / Math.sqrt(3);

/** The fewest readings whose scatter says anything. */
export const LEAST_READINGS = 3;

/**
 * Keeps a verification against a length that is known, in the viewer's name, now. Its scatter is that of its readings.
 * @returns what it says of the gauge.
 * @throws Refused; RangeError where there is no such gauge, or readings are too few.
 */
export async function verifyAgainst(
  viewer: Viewer,
  tag: string,
  { kind, reference, uncertainty, readings, note }: VerificationEntry,
): Promise<GaugeVerdict['verifications'][number]['call']> {
  demand(viewer, 'keep gauges');
  const gauge = await store.getGauge(viewer.shop.id, tag);
  if (gauge === null) throw new RangeError(`The shop has no gauge ${tag}.`);
  if (readings.length < LEAST_READINGS)
    throw new RangeError(
      `Read ${LEAST_READINGS} times at least, the gauge taken off between: fewer show no scatter.`,
    );
  const found = againstReference(Date.now(), readings, { value: reference, uncertainty });
  const known = { ...found, uncertainty: Math.hypot(found.uncertainty, FINEST) };
  const limit = allowedError(gauge.kind);
  const call = verifyGauge(tag, [known], [], { limit }).verifications[0]?.call ?? 'undecided';
  await store.recordVerification(
    viewer.shop.id,
    {
      gauge: tag,
      kind,
      reference,
      note,
      ...known,
      passed: call === 'pass',
      decides: call !== 'undecided',
      by: viewer.code,
    },
    actorOf(viewer),
  );
  return call;
}

/** Keeps that a gauge was looked at, in the viewer's name, now. @throws Refused; RangeError where there is no such gauge. */
export async function recordLook(
  viewer: Viewer,
  tag: string,
  { passed, note }: { passed: boolean; note: string | null },
): Promise<void> {
  demand(viewer, 'keep gauges');
  await keepState(viewer, tag, { kind: 'looked-at', passed, note });
}

/** Takes a gauge that fell out of service, in the viewer's name: anybody may. @throws RangeError where there is no such gauge. */
export const reportDropped = (viewer: Viewer, tag: string, note: string | null): Promise<void> =>
  keepState(viewer, tag, { kind: 'reported-dropped', passed: false, note });

const keepState = (
  viewer: Viewer,
  gauge: string,
  judged: { kind: 'looked-at' | 'reported-dropped'; passed: boolean; note: string | null },
): Promise<void> =>
  store.recordVerification(
    viewer.shop.id,
    { ...judged, gauge, at: Date.now(), error: null, by: viewer.code },
    actorOf(viewer),
  );
