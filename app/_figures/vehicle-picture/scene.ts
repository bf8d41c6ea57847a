import type { Call, DatumLine } from '@/lib/assess';
import type { Section, Side } from '@/lib/measure';

/** A point of the vehicle, where the sheet has it. */
export interface ScenePoint {
  letter: string;
  side: Side;
  section: Section | null;
  /** Along the vehicle, height above the datum plane and distance from the centerline, mm. */
  station: number;
  height: number;
  halfWidth: number;
  /** False where the sheet does not say how far from the centerline it is: it stands in a place of ours. */
  placed: boolean;
  zero: boolean;
}

/** A height as it counts in its round, and the parts that make it, mm. */
export interface SceneHeight {
  letter: string;
  side: Side;
  deviation: number;
  tolerance: number;
  within: boolean;
  /** Expected parts; null where the round is not judged. */
  parts: { gauge: number; body: number } | null;
  call: Call;
}

export interface SceneLength {
  /** As the sheet has it: `K–N`. */
  name: string;
  /** Null where the sheet does not say where an end is. */
  ends: [ScenePlace, ScenePlace] | null;
  /** Where it may lie instead, since its name does not say the side; none: it is told, not drawn. */
  either: [ScenePlace, ScenePlace][];
  deviation: number;
  within: boolean;
}

export interface ScenePlace {
  station: number;
  side: Side;
}

/** A centre pin: sideways from the centerline, to the right positive, mm. */
export interface ScenePin {
  letter: string;
  station: number;
  deviation: number;
  within: boolean;
}

/** One round as it is drawn. */
export interface SceneRound {
  name: string;
  heights: SceneHeight[];
  lengths: SceneLength[];
  pins: ScenePin[];
  datum: DatumLine[];
}

/** A vehicle with the rounds that are shown of it: one, or two to be compared. */
export interface Scene {
  points: ScenePoint[];
  /** Section that was hit, by the readings before the repair; null where that is not known. */
  zone: Section | null;
  rounds: SceneRound[];
}
