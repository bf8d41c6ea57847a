import { listGauges, roundVerdicts, type Gauge, type Viewer } from '@/lib/access';
import { callOf, type RoundVerdict } from '@/lib/assess';
import { frozen, onceFor } from '@/lib/memory';

/** A gauge not verified for longer than this is out of verification, ms: twice a year, with a few days’ grace. */
export const VERIFIED_FOR = 190 * 24 * 3600 * 1000;

/** So many rounds back the overview looks; older ones are history. */
export const LOOKED_BACK = 200;

export type JudgedRound = RoundVerdict & { at: number };

export interface Attention {
  /** Last rounds of their jobs with a height that is undecided or likely mis-set, and a check that would tell. */
  open: JudgedRound[];
  undecidable: JudgedRound[];
  gauges: Gauge[];
}

/** What somebody should do something about now, newest first. `now` is the time of the newest reading. */
export async function attentionNow(viewer: Viewer, now: number, missCost: number): Promise<Attention> {
  const [rounds, gauges] = await Promise.all([
    roundVerdicts(viewer, { last: true, limit: LOOKED_BACK }),
    listGauges(viewer),
  ]);
  return attentionAt(rounds, gauges, now, missCost);
}

const attentionAt = onceFor(
  (rounds: readonly JudgedRound[], gauges: readonly Gauge[], now: number, missCost: number): Attention =>
    frozen({
      open: rounds.filter(
        (round) => round.decidable && round.nextChecks.length > 0 && openHeights(round, missCost).length > 0,
      ),
      undecidable: rounds.filter((round) => !round.decidable),
      gauges: gauges.filter((gauge) => gaugeConcern(gauge, now) !== null),
    }),
);

/** Heights of a round that a re-check should settle. */
export function openHeights(round: RoundVerdict, missCost: number): RoundVerdict['heights'] {
  return round.heights.filter(
    (height) =>
      !height.zero && ['undecided', 'likely-gauge', 'likely-both'].includes(callOf(height.p, missCost)),
  );
}

export const CONCERNS = ['out of service', 'verification overdue', 'never verified'] as const;
export type GaugeConcern = (typeof CONCERNS)[number];

/** Why a gauge should not be used as it is, or null. */
export function gaugeConcern(gauge: Gauge, now: number): GaugeConcern | null {
  if (gauge.state === 'retired') return null;
  if (gauge.state === 'out-of-service') return 'out of service';
  if (gauge.verifiedAt === null) return 'never verified';
  return now - gauge.verifiedAt > VERIFIED_FOR ? 'verification overdue' : null;
}
