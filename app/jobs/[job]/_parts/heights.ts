import { evidenceAddress, heightAnchor } from '@/app/_words/address';
import { sideName } from '@/app/_words/dimensions';
import { callOf, setupDimensionKey, type Call, type HeightVerdict, type RoundVerdict } from '@/lib/assess';
import type { Round, Side } from '@/lib/measure';

/** One height of one setup: what was read, what it counts for, and what is thought of it. */
export interface HeightRow {
  key: string;
  point: string;
  side: Side;
  station: number | null;
  zero: boolean;
  nominal: number;
  tolerance: number;
  /** As read, clearance included: the mean of the setup's readings. */
  reading: number;
  deviation: number;
  n: number;
  setup: string;
  gauge: string;
  technician: string;
  /** Several setups of one height: the last one counts for the record. */
  last: boolean;
  verdict: HeightVerdict | null;
  /** What is said of it; nothing is decided where the center section does not carry the datum. */
  call: Call;
  /** Address of what stands behind it. */
  evidence: string;
}

/** Heights of a round from front to rear, left before right, each setup in the order it was hung. */
export function heightRows(round: Round, verdict: RoundVerdict | null, missCost: number): HeightRow[] {
  const { job, stage, attempt } = round;
  const verdicts = new Map(
    verdict?.heights.map((height) => [`${height.setup} ${height.point} ${height.side}`, height]),
  );
  const lastSetup = new Map<string, string>();
  const rows: HeightRow[] = [];
  for (const setup of round.setups) {
    for (const seen of setup.observations) {
      if (seen.quantity !== 'height' || seen.side === null) continue;
      lastSetup.set(`${seen.point} ${seen.side}`, setup.label);
      const height = { setup: setup.label, point: seen.point, side: seen.side };
      const told = verdicts.get(`${setup.label} ${seen.point} ${seen.side}`) ?? null;
      rows.push({
        key: setupDimensionKey(setup.label, seen),
        point: seen.point,
        side: seen.side,
        station: seen.station,
        zero: seen.zero,
        nominal: seen.nominal,
        tolerance: seen.tolerance,
        reading: seen.nominal + round.clearance + seen.deviation,
        deviation: seen.deviation,
        n: seen.n,
        setup: setup.label,
        gauge: setup.gauge,
        technician: setup.technician,
        last: false,
        verdict: told,
        call: told === null || verdict?.decidable === false ? 'undecided' : callOf(told.p, missCost),
        evidence: evidenceAddress(job, stage, attempt, heightAnchor(height)),
      });
    }
  }
  for (const row of rows) row.last = lastSetup.get(`${row.point} ${row.side}`) === row.setup;
  return rows.sort(
    (a, b) =>
      (a.station ?? 0) - (b.station ?? 0) ||
      a.side.localeCompare(b.side) ||
      a.point.localeCompare(b.point) ||
      Number(a.last) - Number(b.last),
  );
}

/** Heights whose gauge is likely set wrong, by name: each is to be hung again and read again. */
export function toRehang(rows: readonly HeightRow[]): string[] {
  return rows
    .filter((row) => row.last && !row.zero)
    .filter((row) => ['likely-gauge', 'likely-both'].includes(row.call))
    .map((row) => `${row.point} ${sideName(row.side)} (${row.gauge})`);
}
