import type { GaugeKind } from '@/lib/measure';
import type { Gauge, GaugeVerification } from '@/lib/store';
import { dayStart } from './calendar';
import { gaugeError, type GaugeModel } from './gauge';
import { DROPPED_DAY, FIRST_DAY, MENDED_DAY, TIME_ZONE } from './stories';

const HOUR = 3_600_000;
const TRAINER = 'HOL';

const gauge = (tag: string, kind: GaugeKind, fixedMark: number | null, error: number): GaugeModel => ({
  tag,
  kind,
  fixedMark,
  errors: [{ from: dayStart(FIRST_DAY, TIME_ZONE), error }],
});

const at = (date: string) => dayStart(date, TIME_ZONE) + 9 * HOUR;

export const GAUGES: readonly GaugeModel[] = [
  gauge('CG1', 'centering', 14, 0.1),
  gauge('CG2', 'centering', 17, -0.15),
  gauge('CG3', 'centering', 21, 0.05),
  {
    ...gauge('CG4', 'centering', 24, 0.1),
    errors: [
      { from: dayStart(FIRST_DAY, TIME_ZONE), error: 0.1 },
      { from: at(DROPPED_DAY), error: 2.1 },
      { from: at(MENDED_DAY), error: 0.05 },
    ],
  },
  gauge('CG5', 'centering', 19, -0.1),
  gauge('CG6', 'centering', 27, 0.2),
  gauge('ST1', 'strut', 33, 0.15),
  gauge('TR1', 'tram', null, -0.1),
  gauge('TD1', 'digital-tram', null, 0.05),
  gauge('TK1', 'tracking', null, 0.1),
  gauge('TP1', 'tape', null, 0.4),
];

/** Half-yearly, in November and May; the tracking gauge was forgotten in May. */
const ROUTINE_DAYS = ['2025-11-18', '2026-05-19', '2026-11-10'];
const FORGOTTEN = { tag: 'TK1', days: ['2026-05-19', '2026-11-10'] };
/** An error that a gauge may have and still pass, mm. */
const ALLOWED_ERROR = 0.5;
/** Three readings of a reference length by a steady hand: the standard uncertainty of their mean's error, mm. */
const AGAINST = { kind: 'reference-length', reference: 1000, uncertainty: 0.06 } as const;

function verification(model: GaugeModel, time: number, note: string | null): GaugeVerification {
  // The trainer compares with a reference length and reads to a twentieth of a millimetre.
  const error = Number((Math.round(gaugeError(model, time) * 20) / 20).toFixed(2));
  const passed = Math.abs(error) <= ALLOWED_ERROR;
  return { gauge: model.tag, at: time, ...AGAINST, error, passed, by: TRAINER, note };
}

function verificationsOf(model: GaugeModel): GaugeVerification[] {
  const routine = ROUTINE_DAYS.filter(
    (day) => model.tag !== FORGOTTEN.tag || !FORGOTTEN.days.includes(day),
  ).map((day) => verification(model, at(day), null));
  if (model.tag !== 'CG4') return routine;
  const found = verification(model, at(MENDED_DAY) - HOUR, 'Fell off the bench in June; hanger rod bent.');
  const mended = verification(model, at(MENDED_DAY) + 3 * HOUR, 'Rod straightened, fixed mark set anew.');
  return [...routine, found, mended].sort((a, b) => a.at - b.at);
}

/** A gauge as the store keeps it, with its verifications, oldest first. */
export type VerifiedGauge = Gauge & { verifications: GaugeVerification[] };

export const VERIFIED_GAUGES: readonly VerifiedGauge[] = GAUGES.map((model) => {
  const verifications = verificationsOf(model);
  return {
    tag: model.tag,
    kind: model.kind,
    fixedMark: model.fixedMark,
    state: 'in-service',
    verifiedAt: verifications.at(-1)?.at ?? null,
    verifications,
  };
});
