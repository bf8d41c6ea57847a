import type { Cause, Round, Section, Side } from '@/lib/measure';
import type { Phase } from './learned';

/** Heights of one setup at one station: index 0 is left, 1 right. A side that was not read has n = 0. */
export interface HeightPair {
  setup: number;
  label: string;
  technician: string;
  gauge: string;
  /** Readings, mean deviation, on each side. */
  n: [number, number];
  y: [number, number];
  nominal: [number, number];
  tolerance: [number, number];
  points: [string | null, string | null];
  cause: [Cause | null, Cause | null];
  /** For a height away from the zero stations: the zero setups it is read against (indices into `zeroSetups`). */
  against: [number, number];
}

export interface Station {
  x: number;
  section: Section;
  zero: boolean;
  /** Lever of the two zero stations at this place. */
  weights: [number, number];
  pairs: HeightPair[];
}

/** A length, and the damaged points it would be evidence of: `[station, side]` in `frame.stations`. */
export interface LengthEvidence {
  point: string;
  section: Section | null;
  technician: string;
  /** How often it was set up in this round, and read in all; `y` is the mean over the setups. */
  setups: number;
  n: number;
  y: number;
  tolerance: number;
  ends: [number, 0 | 1][];
}

/** One round as the inference sees it: two zero stations first, then the others in order of distance. */
export interface RoundFrame {
  phase: Phase;
  clearance: number;
  /** The first two are the zero stations a (front) and b (rear). */
  stations: Station[];
  /** Zero setups in the order they were hung: station 0 or 1, and the pair. */
  zeroSetups: { station: 0 | 1; pair: HeightPair }[];
  lengths: LengthEvidence[];
}

const sideIndex = (side: Side): 0 | 1 => (side === 'L' ? 0 : 1);

export function phaseOf(round: Pick<Round, 'stage' | 'attempt'>): Phase {
  if (round.stage === 'before') return 'before';
  return round.attempt === 1 ? 'after' : 'again';
}

/**
 * The frame of a round, or a reason why its heights cannot be judged: both zero stations must be there.
 * Each setup is read against the zero setups last hung before it.
 */
export function frameRound(round: Round): RoundFrame | { why: string } {
  const byStation = new Map<number, Station>();
  const setups = [...round.setups].sort((a, b) => a.takenAt - b.takenAt || (a.label < b.label ? -1 : 1));
  const pairsOf = new Map<string, HeightPair>();
  const hung: { station: Station; pair: HeightPair }[] = [];
  setups.forEach((setup, index) => {
    for (const seen of setup.observations) {
      if (seen.quantity !== 'height' || seen.station === null || seen.side === null) continue;
      let station = byStation.get(seen.station);
      if (!station) {
        station = {
          x: seen.station,
          section: seen.section ?? 'center',
          zero: seen.zero,
          weights: [0, 0],
          pairs: [],
        };
        byStation.set(seen.station, station);
      }
      if (seen.section !== null) station.section = seen.section;
      if (seen.zero) station.zero = true;
      const key = `${index} ${seen.station}`;
      let pair = pairsOf.get(key);
      if (!pair) {
        pair = {
          setup: index,
          label: setup.label,
          technician: setup.technician,
          gauge: setup.gauge,
          n: [0, 0],
          y: [0, 0],
          nominal: [Number.NaN, Number.NaN],
          tolerance: [seen.tolerance, seen.tolerance],
          points: [null, null],
          cause: [null, null],
          against: [-1, -1],
        };
        pairsOf.set(key, pair);
        station.pairs.push(pair);
        hung.push({ station, pair });
      }
      const s = sideIndex(seen.side);
      pair.n[s] = seen.n;
      pair.y[s] = seen.deviation;
      pair.nominal[s] = seen.nominal;
      pair.tolerance[s] = seen.tolerance;
      pair.points[s] = seen.point;
      pair.cause[s] = seen.cause;
    }
  });
  const zeros = [...byStation.values()].filter((station) => station.zero).sort((a, b) => a.x - b.x);
  const [a, b] = zeros;
  if (!a || !b || zeros.length !== 2) {
    return {
      why:
        zeros.length === 1
          ? 'One zero station was measured in this round; a datum plane needs exactly two.'
          : `${zeros.length} zero stations were measured in this round; a datum plane needs exactly two.`,
    };
  }
  // A section that the file leaves open follows from the place: before, between or behind the zero stations.
  for (const station of byStation.values()) {
    if (!station.zero && station.section === 'center') {
      station.section = station.x < a.x ? 'front' : station.x > b.x ? 'rear' : 'center';
    }
    station.weights = [(b.x - station.x) / (b.x - a.x), (station.x - a.x) / (b.x - a.x)];
  }
  const others = [...byStation.values()]
    .filter((station) => !station.zero)
    .sort((p, q) => distance(p.x, a.x, b.x) - distance(q.x, a.x, b.x) || p.x - q.x);
  const stations = [a, b, ...others];
  const zeroSetups: RoundFrame['zeroSetups'] = hung.flatMap(({ station, pair }) =>
    station.zero ? [{ station: station === a ? 0 : 1, pair }] : [],
  );
  for (const station of others)
    for (const pair of station.pairs) pair.against = lastZeros(zeroSetups, pair.setup);
  return {
    phase: phaseOf(round),
    clearance: round.clearance,
    stations,
    zeroSetups,
    lengths: lengthsOf(round, stations),
  };
}

const distance = (x: number, a: number, b: number): number => (x < a ? a - x : x > b ? x - b : 0);

function lastZeros(zeroSetups: RoundFrame['zeroSetups'], setup: number): [number, number] {
  const last: [number, number] = [-1, -1];
  zeroSetups.forEach((zero, k) => {
    if (zero.pair.setup <= setup || last[zero.station] < 0) last[zero.station] = k;
  });
  return last;
}

/** `K-N` or `K.L-N.R`: which heights' damage this length would show. */
function lengthsOf(round: Round, stations: Station[]): LengthEvidence[] {
  const bearing = new Map<string, [number, 0 | 1][]>();
  stations.forEach((station, index) => {
    for (const pair of station.pairs) {
      for (const s of [0, 1] as const) {
        const point = pair.points[s];
        if (point === null) continue;
        for (const name of [point, `${point}.${s === 0 ? 'L' : 'R'}`]) {
          const list = bearing.get(name) ?? [];
          if (!list.some(([g, side]) => g === index && side === s)) list.push([index, s]);
          bearing.set(name, list);
        }
      }
    }
  });
  // What moved a length is the same however often it is read, so all its readings are one piece of evidence.
  const lengths = new Map<string, LengthEvidence>();
  for (const setup of round.setups) {
    for (const seen of setup.observations) {
      if (seen.quantity !== 'length') continue;
      const key = `${seen.point} ${seen.nominal}`;
      const known = lengths.get(key);
      if (known) {
        known.y = (known.y * known.setups + seen.deviation) / (known.setups + 1);
        known.n += seen.n;
        known.setups++;
        continue;
      }
      lengths.set(key, {
        point: seen.point,
        section: seen.section,
        technician: setup.technician,
        setups: 1,
        n: seen.n,
        y: seen.deviation,
        tolerance: seen.tolerance,
        ends: seen.point.split('-').flatMap((end) => bearing.get(end) ?? []),
      });
    }
  }
  return [...lengths.values()];
}
