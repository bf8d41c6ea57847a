import type { Beam } from './beam';
import { foresee, stateAhead } from './foresee';
import { LetGo } from './let-go';
import { mostOf, type Outlook } from './outlook';

const letGo = new LetGo();

/**
 * Lets go of the explanations in a beam that the setups from `step` on are foreseen to leave behind the best by more
 * than `reach`, in ln; what is let go of a kind that is kept gives its likeliest its weight. What is foreseen stays
 * with the explanations (`outlook`).
 * @returns the share, as foreseen, of the kinds that are let go.
 */
export function lookAhead(outlook: Outlook, beam: Beam, step: number, reach: number): number {
  const coming = outlook[step];
  if (coming === undefined) return 0;
  const { count, logWeight } = beam;
  const most = mostOf(coming);
  // Without a setup at the station under way, nothing of its body is asked for.
  const n = coming[0]?.under === true ? beam.size : beam.size - 2;
  letGo.begin(count, reach);
  for (let index = 0; index < count; index++) {
    const own = logWeight[index] ?? -Infinity;
    if (!letGo.isWorth(own + most)) {
      letGo.score(index, own + most);
      continue;
    }
    takeState(beam, index, n);
    const { all, after } = foresee(coming, n, step, most, letGo.floor - own);
    letGo.score(index, own + all);
    beam.outlook[index] = after;
  }
  const { order, dropped } = letGo.end(beam.kind, logWeight);
  if (order.length < count) beam.retain(order);
  return dropped;
}

/** Puts the first `n` entries of an explanation's state where they are looked ahead from. */
function takeState(beam: Beam, index: number, n: number): void {
  const { size } = beam;
  const { mean, covariance } = stateAhead(size);
  const m = index * size;
  for (let i = 0; i < n; i++) {
    mean[i] = beam.mean[m + i] ?? 0;
    const row = (m + i) * size;
    for (let j = 0; j < n; j++) covariance[i * n + j] = beam.covariance[row + j] ?? 0;
  }
}
