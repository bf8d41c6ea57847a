import { callOf, type Call, type HeightVerdict, type RoundVerdict } from '@/lib/assess';
import type { Cause } from '@/lib/measure';
import type { StoredHeight } from '@/lib/access';
import { frozen, onceFor } from '@/lib/memory';

export interface OwnHeight extends Pick<HeightVerdict, 'setup' | 'point' | 'side' | 'deviation' | 'p'> {
  call: Call;
  /** What a re-check showed, or null. */
  proved: Cause | null;
}

/** A round as one of its technicians asks of it. */
export interface OwnRound extends Pick<RoundVerdict, 'job' | 'stage' | 'attempt' | 'why'> {
  at: number;
  /** Heights that this hand hung away from the zero stations. */
  heights: number;
  /** Those of them that are not called neither. */
  doubtful: OwnHeight[];
}

const nameOf = (
  job: string,
  { setup, point, side }: Pick<HeightVerdict, 'setup' | 'point' | 'side'>,
): string => JSON.stringify([job, setup, point, side]);

/** Of each round the heights of one hand alone, called, with what re-checks showed of them. */
export const ownRounds = onceFor(function ownRounds(
  rounds: readonly (RoundVerdict & { at: number })[],
  technician: string,
  stored: readonly StoredHeight[],
  missCost: number,
): readonly OwnRound[] {
  const proved = new Map(stored.map((height) => [nameOf(height.job, height), height.cause]));
  return frozen(
    rounds.map(({ job, stage, attempt, why, at, heights }) => {
      const own = heights.filter((height) => height.technician === technician && !height.zero);
      return {
        job,
        stage,
        attempt,
        why,
        at,
        heights: own.length,
        doubtful: own
          .map(({ setup, point, side, deviation, p }) => ({
            setup,
            point,
            side,
            deviation,
            p,
            call: callOf(p, missCost),
            proved: proved.get(nameOf(job, { setup, point, side })) ?? null,
          }))
          .filter(({ call }) => call !== 'nothing-found'),
      };
    }),
  );
});
