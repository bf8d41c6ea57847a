import { centerlineEvidenceOf, evidenceOf, type RoundEvidence } from '@/lib/assess/evidence';
import type { Learned } from '@/lib/assess';
import { LastUsed, onceFor } from '@/lib/memory';
import type { Round } from '@/lib/measure';

interface Evidence {
  heights: RoundEvidence | { why: string };
  pins: RoundEvidence | null;
}

/** So many rounds are remembered of what a shop has learned. */
const MOST = 20;

const known = new WeakMap<Learned, LastUsed<Evidence>>();

const nameOf = onceFor((round: Round): string => JSON.stringify(round));

/** The evidence of a round, worked out once for as long as neither its readings change nor what was learned. */
export function evidenceKept(round: Round, learned: Learned): Evidence {
  const kept = known.get(learned) ?? new LastUsed<Evidence>(MOST, () => 1);
  known.set(learned, kept);
  const name = nameOf(round);
  const there = kept.get(name);
  if (there !== undefined) return there;
  const made: Evidence = {
    heights: Object.freeze(evidenceOf(round, learned)),
    pins: Object.freeze(centerlineEvidenceOf(round, learned)),
  };
  kept.set(name, made);
  return made;
}
