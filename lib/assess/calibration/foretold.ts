import { CAUSES, type Cause, type Round, type Setup, type Side, SIDES } from '@/lib/measure/types';
import { type ExplainedRound, explainRound, judgeHeight } from '../cause/judge';
import type { Learned } from '../cause/learned';
import { type HeightParts, heightParts } from '../cause/outcomes';
import { whyUndecidable } from '../round/decidable';
import type { HeightVerdict } from '../types';

/** A verdict counts as proof from this probability on. */
export const CLEAR = 0.9;

/** What was said of one height before it was checked again, and what the check proved. */
export interface ForetoldHeight {
  setup: string;
  point: string;
  side: Side;
  /** From the readings before the check, recorded causes set aside. Sums to one. */
  p: Record<Cause, number>;
  /** Null where the check left it open. */
  proved: Cause | null;
  by: 'rehang' | 'recorded';
}

/**
 * The heights of a round whose cause became known, each with what was said of it before. It became known because
 * somebody recorded it, or because the gauge was hung again at the same station: then the readings of the whole
 * round prove it where they are clear. Zero stations count only where a cause was recorded, since hanging a zero
 * gauge again says nothing of how it was set before unless all others are read anew. A round whose center section
 * does not carry the datum had no verdict, so nothing was foretold.
 */
export function foretoldHeights(round: Round, learned: Learned): ForetoldHeight[] {
  const bare = withoutCauses(round);
  const checked = checkedSetups(bare);
  const recorded = recordedCauses(round);
  if (checked.size === 0 && recorded.size === 0) return [];
  if (whyUndecidable(bare, learned) !== null) return [];
  const states = new States(learned);
  const found: ForetoldHeight[] = [];
  for (const setup of bare.setups) {
    const again = checked.get(setup.label);
    for (const seen of setup.observations) {
      if (seen.quantity !== 'height' || seen.side === null) continue;
      const height = { setup: setup.label, point: seen.point, side: seen.side };
      const cause = recorded.get(keyOf(height)) ?? null;
      if (cause === null && (again === undefined || seen.zero)) continue;
      const before = states.verdict(again === undefined ? bare : until(bare, again), height);
      if (before === undefined) continue;
      found.push({
        p: before.p,
        proved: cause ?? clear(states.verdict(bare, height)),
        by: cause === null ? 'rehang' : 'recorded',
        ...height,
      });
    }
  }
  return found;
}

const keyOf = ({ setup, point, side }: { setup: string; point: string; side: Side }): string =>
  JSON.stringify([setup, point, side]);

function withoutCauses(round: Round): Round {
  const setups = [...round.setups]
    .sort((a, b) => a.takenAt - b.takenAt || (a.label < b.label ? -1 : 1))
    .map((setup) => ({
      ...setup,
      observations: setup.observations.map((seen) => ({ ...seen, cause: null })),
    }));
  return { ...round, setups };
}

function recordedCauses(round: Round): Map<string, Cause> {
  const causes = new Map<string, Cause>();
  for (const { label, observations } of round.setups) {
    for (const { quantity, point, side, cause } of observations) {
      if (quantity === 'height' && side !== null && cause !== null)
        causes.set(keyOf({ setup: label, point, side }), cause);
    }
  }
  return causes;
}

/** The setups after which the same station was hung again, each with the first setup that did so. */
function checkedSetups({ setups }: Round): Map<string, Setup> {
  const checked = new Map<string, Setup>();
  setups.forEach((setup, index) => {
    const stations = stationsOf(setup);
    const again = setups
      .slice(index + 1)
      .find((later) => [...stationsOf(later)].some((station) => stations.has(station)));
    if (again !== undefined) checked.set(setup.label, again);
  });
  return checked;
}

const stationsOf = ({ observations }: Setup): Set<number> =>
  new Set(
    observations.flatMap(({ quantity, station }) =>
      quantity === 'height' && station !== null ? [station] : [],
    ),
  );

/** The round as it stood before a setup was hung. */
const until = (round: Round, setup: Setup): Round => ({
  ...round,
  setups: round.setups.slice(0, round.setups.indexOf(setup)),
});

function clear(verdict: HeightVerdict | undefined): Cause | null {
  return CAUSES.find((cause) => (verdict?.p[cause] ?? 0) >= CLEAR) ?? null;
}

/** A round as it stood at several times: each is explained once, and its heights are judged as they are asked for. */
class States {
  readonly #learned: Learned;
  readonly #known = new Map<number, { explained: ExplainedRound; heights: HeightParts[] } | null>();

  constructor(learned: Learned) {
    this.#learned = learned;
  }

  verdict(round: Round, of: { setup: string; point: string; side: Side }): HeightVerdict | undefined {
    const state = this.#state(round);
    const height = state?.heights.find(
      ({ pair, side }) =>
        pair.label === of.setup && pair.points[side] === of.point && SIDES[side] === of.side,
    );
    return state && height ? judgeHeight(state.explained, height) : undefined;
  }

  #state(round: Round): { explained: ExplainedRound; heights: HeightParts[] } | null {
    const known = this.#known.get(round.setups.length);
    if (known !== undefined) return known;
    const explained = explainRound(round, this.#learned);
    const state = 'why' in explained ? null : { explained, heights: heightParts(explained.model) };
    this.#known.set(round.setups.length, state);
    return state;
  }
}
