import type { Station } from '../cause/frame';
import type { JudgedRound } from '../cause/judge';
import type { Learned } from '../cause/learned';
import type { Misset } from '../cause/learned';
import { SLIP_WORDS } from '../cause/signature';
import { barsOf, datumOf, type Member } from './bars';
import { type ExplainedFault, faultsOf } from './faults';
import type { Fault, Hypothesis } from './types';

/** A slip is named where it makes up at least this share of a hypothesis. */
const NAMED = 0.5;

/** Explanations that have the same things wrong, likeliest group first. */
export interface Group {
  probability: number;
  members: Member[];
  /** By member, as `faultsOf` lists them. */
  faults: ExplainedFault[][];
}

/** The explanations of a round by what they take to be wrong and in which direction, sizes left open. */
export function groupsOf({ model, found }: JudgedRound): Group[] {
  const groups = new Map<string, { members: Member[]; faults: ExplainedFault[][]; weight: number }>();
  const total = found.explanations.reduce((sum, { weight }) => sum + weight, 0);
  for (const { weight, explanation } of found.explanations) {
    const faults = faultsOf(model, explanation);
    const key = faults.map((fault) => fault.key).join('; ');
    const group = groups.get(key) ?? { members: [], faults: [], weight: 0 };
    group.members.push({ share: weight, explanation });
    group.faults.push(faults);
    group.weight += weight;
    groups.set(key, group);
  }
  return [...groups.values()]
    .map(({ members, faults, weight }) => ({
      probability: weight / total,
      members: members.map(({ share, explanation }) => ({ share: share / weight, explanation })),
      faults,
    }))
    .sort((a, b) => b.probability - a.probability);
}

export function hypothesisOf({ model }: JudgedRound, learned: Learned, group: Group): Hypothesis {
  return {
    probability: group.probability,
    faults: faults(group, model.frame.stations),
    datum: datumOf(model, group.members),
    bars: barsOf(model, learned, group.members),
  };
}

/** The faults that all members share, each with its expected size. */
function faults({ members, faults: byMember }: Group, stations: readonly Station[]): Fault[] {
  return (byMember[0] ?? []).map((first, index) => {
    let left = 0;
    let right = 0;
    const slips = new Map<Misset, number>();
    members.forEach(({ share }, member) => {
      const fault = byMember[member]?.[index];
      if (!fault) return;
      left += share * fault.left;
      right += share * fault.right;
      if (fault.misset !== null) slips.set(fault.misset, (slips.get(fault.misset) ?? 0) + share);
    });
    const slip = [...slips].find(([, share]) => share >= NAMED)?.[0] ?? null;
    return {
      what: first.what,
      zero: first.zero,
      station: stations[first.station]?.x ?? Number.NaN,
      setup: first.what === 'gauge' ? first.pair.label : null,
      gauge: first.what === 'gauge' ? first.pair.gauge : null,
      repeated: (stations[first.station]?.pairs.length ?? 0) > 1,
      points: first.pair.points,
      sides: first.sides,
      left,
      right,
      slip: slip === null ? null : SLIP_WORDS[slip],
    };
  });
}
