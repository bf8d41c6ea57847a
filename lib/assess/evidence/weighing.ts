import { SIDES } from '@/lib/measure/types';
import type { JudgedRound } from '../cause/judge';
import { type Chain, chainOf, hungOrder } from './chain';
import type { Group } from './hypotheses';
import type { Weighed } from './types';

/**
 * Which evidence speaks for the first of two hypotheses and which for the second. A hypothesis is a sum over its
 * explanations, so each term is ln p(this | all before, hypothesis), the explanations weighed by what went before.
 * The differences sum to the ln of the odds of the two hypotheses.
 */
export function weighing({ model }: JudgedRound, first: Group, second: Group): Weighed[] {
  const pieces = piecesOf(model);
  const a = sums(model, first, pieces);
  const b = sums(model, second, pieces);
  let before = 0;
  return pieces.map(({ term: _, ...piece }, index) => {
    const sum = (a[index] ?? 0) - (b[index] ?? 0);
    const difference = sum - before;
    before = sum;
    return { ...piece, difference, sum };
  });
}

type Piece = Omit<Weighed, 'difference' | 'sum'> & { term: (chain: Chain) => number };

/** Every piece of evidence: history, then each height in the order hung, lengths, recorded re-checks. */
function piecesOf(model: JudgedRound['model']): Piece[] {
  const none = { setup: null, point: null, side: null, measured: null };
  const heights = hungOrder(model).flatMap((step): Piece[] => {
    const pair = model.steps[step]?.pair;
    if (!pair) return [];
    return ([0, 1] as const).flatMap((side): Piece[] =>
      pair.n[side] === 0
        ? []
        : [
            {
              kind: 'height',
              setup: pair.label,
              point: pair.points[side],
              side: SIDES[side],
              measured: pair.y[side],
              term: (chain) => chain.heights[step]?.[side] ?? 0,
            },
          ],
    );
  });
  const lengths = model.lengths.map(({ evidence }, index): Piece => ({
    ...none,
    kind: 'length',
    point: evidence.point,
    measured: evidence.y,
    term: (chain) => chain.lengths[index] ?? 0,
  }));
  const recorded = [...model.zeros, ...model.steps].some(({ pair }) =>
    pair.cause.some((cause) => cause !== null),
  );
  return [
    { ...none, kind: 'history', term: (chain) => chain.prior },
    ...heights,
    ...lengths,
    ...(recorded ? [{ ...none, kind: 'recheck' as const, term: (chain: Chain) => chain.rechecks }] : []),
  ];
}

/** ln of a hypothesis' weight after each piece of evidence. */
function sums(model: JudgedRound['model'], group: Group, pieces: readonly Piece[]): number[] {
  const chains = group.members.map(({ explanation }) => chainOf(model, explanation));
  const running = new Float64Array(chains.length);
  return pieces.map(({ term }) => {
    chains.forEach((chain, i) => {
      running[i] = (running[i] ?? 0) + term(chain);
    });
    return logSum(running);
  });
}

function logSum(values: Float64Array): number {
  const top = values.reduce((most, value) => Math.max(most, value), -Infinity);
  if (top === -Infinity) return top;
  return top + Math.log(values.reduce((sum, value) => sum + Math.exp(value - top), 0));
}
