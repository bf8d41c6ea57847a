import type { Job, Side } from '@/lib/measure';
import type { HandCell } from '../my-hand';
import type { RoundVerdict } from '../types';

/** What the verdict says that one hanger was off by, and where it hung. */
export interface SettingError {
  technician: string;
  gauge: string;
  at: number;
  section: HandCell['section'];
  side: Side;
  /** Outside the zero span, mm; 0 within it. */
  distance: number;
  /** mm. */
  error: number;
  /** Readings beyond the first, and their sum of squares. */
  readingDf: number;
  readingSs: number;
}

/**
 * Round by round, the ordinary setting errors of a job's heights away from the zero stations. Likely mis-sets are set aside, as in every
 * figure of setting: they have figures of their own, and one of them would drown all else.
 */
export function settingErrors(job: Job, verdicts: readonly RoundVerdict[]): SettingError[][] {
  return job.rounds.map((round) => {
    const verdict = verdicts.find((one) => one.stage === round.stage && one.attempt === round.attempt);
    if (verdict?.decidable !== true) return [];
    const zeros = verdict.heights.filter(({ zero }) => zero).map(({ station }) => station);
    const [front, rear] = [Math.min(...zeros), Math.max(...zeros)];
    return verdict.heights.flatMap((height): SettingError[] => {
      if (height.zero || height.p.gauge + height.p.both > 0.5) return [];
      const setup = round.setups.find(({ label }) => label === height.setup);
      const seen = setup?.observations.find(
        ({ quantity, point, side }) =>
          quantity === 'height' && point === height.point && side === height.side,
      );
      if (setup === undefined || seen?.section == null) return [];
      return [
        {
          technician: height.technician,
          gauge: height.gauge,
          at: setup.takenAt,
          section: seen.section,
          side: height.side,
          distance: zeros.length === 0 ? 0 : Math.max(0, front - height.station, height.station - rear),
          error: height.misset,
          readingDf: seen.n - 1,
          readingSs: seen.ss,
        },
      ];
    });
  });
}
