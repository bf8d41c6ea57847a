import type { Learned, Misset, Pattern, Phase } from '../cause/learned';
import { MISSETS, PHASES } from '../cause/learned';
import { SIZE_BANDS } from '../cause/sizes';
import { bodyKey, gaugeKey, handKey, type Scores, scores } from './scores';

/** Expected counts and sums over the explanations of many rounds. All additive. */
export interface Tally {
  rounds: number;
  /** What tells gauge from body: stations hung again in a round, and causes that re-checks proved. */
  settled: number;
  logEvidence: number;
  /** Setups and expected mis-sets by technician. */
  setups: Map<string, { count: number; misset: number }>;
  missets: Record<Misset, number>;
  missetSizes: number[];
  damageSizes: number[];
  /** Expected stations by phase, impact class, section (front, center, rear) and pattern. */
  impacts: Record<
    Phase,
    { share: number; patterns: Record<'front' | 'center' | 'rear', Record<Pattern, number>> }[]
  >;
  common: { cross: number; squares: number };
  lengths: {
    squares: number;
    settings: number;
    damaged: number;
    damagedOut: number;
    sound: number;
    soundOut: number;
  };
  marks: Map<string, { precision: number; weighted: number }>;
  /** ln of the scatters: each technician's setting (`t …`), the sound body before (`b before`) and after repair (`b after`). */
  scatters: Scores;
  biases: Scores;
}

export function emptyTally(learned: Learned, technicians: string[], gauges: string[]): Tally {
  const none = (): Record<Pattern, number> => ({ none: 0, left: 0, right: 0, both: 0, opposed: 0 });
  return {
    rounds: 0,
    settled: 0,
    logEvidence: 0,
    setups: new Map(technicians.map((t) => [t, { count: 0, misset: 0 }])),
    missets: Object.fromEntries(MISSETS.map((m) => [m, 0])) as Record<Misset, number>,
    missetSizes: SIZE_BANDS.map(() => 0),
    damageSizes: SIZE_BANDS.map(() => 0),
    impacts: Object.fromEntries(
      PHASES.map((phase) => [
        phase,
        learned.bodies[phase].impacts.map(() => ({
          share: 0,
          patterns: { front: none(), center: none(), rear: none() },
        })),
      ]),
    ) as Tally['impacts'],
    common: { cross: 0, squares: 0 },
    lengths: { squares: 0, settings: 0, damaged: 0, damagedOut: 0, sound: 0, soundOut: 0 },
    marks: new Map(gauges.map((g) => [g, { precision: 0, weighted: 0 }])),
    scatters: scores([...technicians.map(handKey), bodyKey('before'), bodyKey('after')]),
    biases: scores([...technicians.map(handKey), ...gauges.map(gaugeKey)]),
  };
}

/** Adds what other rounds said, of the same technicians and gauges. */
export function addTally(into: Tally, more: Tally): void {
  into.rounds += more.rounds;
  into.settled += more.settled;
  into.logEvidence += more.logEvidence;
  addByKey(into.setups, more.setups);
  addFields(into.missets, more.missets);
  addItems(into.missetSizes, more.missetSizes);
  addItems(into.damageSizes, more.damageSizes);
  for (const phase of PHASES)
    into.impacts[phase].forEach((impact, c) => {
      const other = more.impacts[phase][c];
      if (other === undefined) return;
      impact.share += other.share;
      for (const section of ['front', 'center', 'rear'] as const)
        addFields(impact.patterns[section], other.patterns[section]);
    });
  addFields(into.common, more.common);
  addFields(into.lengths, more.lengths);
  addByKey(into.marks, more.marks);
  for (const kind of ['scatters', 'biases'] as const) {
    addItems(into[kind].score, more[kind].score);
    addItems(into[kind].information, more[kind].information);
    addItems(into[kind].expected, more[kind].expected);
    addItems(into[kind].missing, more[kind].missing);
  }
}

function addByKey<Sums extends Record<string, number>>(
  into: Map<string, Sums>,
  more: ReadonlyMap<string, Sums>,
) {
  for (const [key, sums] of into) {
    const other = more.get(key);
    if (other !== undefined) addFields(sums, other);
  }
}

function addFields<Key extends string>(into: Record<Key, number>, more: Readonly<Record<Key, number>>): void {
  for (const key of Object.keys(into) as Key[]) into[key] += more[key];
}

function addItems(into: number[] | Float64Array, more: readonly number[] | Float64Array): void {
  for (let i = 0; i < into.length; i++) into[i] = (into[i] ?? 0) + (more[i] ?? 0);
}
