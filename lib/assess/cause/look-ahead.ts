import type { Beam } from './beam';
import { foresee, type Outlook } from './outlook';

/** ln weights with what is foreseen, by explanation. */
let scores = new Float64Array(512);
/** Where the likeliest of each kind that is kept stands. */
const likeliest = new Map<number, number>();

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
  if (scores.length < count) scores = new Float64Array(2 * count);
  let best = -Infinity;
  for (let index = 0; index < count; index++) {
    const own = logWeight[index] ?? -Infinity;
    const { all, after } = foresee(coming, beam, index, step, best - reach - own);
    const score = own + all;
    scores[index] = score;
    beam.outlook[index] = after;
    if (score > best) best = score;
  }
  const floor = best - reach;
  const order: number[] = [];
  likeliest.clear();
  let kept = 0;
  for (let index = 0; index < count; index++) {
    const score = scores[index] ?? -Infinity;
    if (score < floor) continue;
    order.push(index);
    kept += Math.exp(score - best);
    const kind = beam.kind[index] ?? 0;
    const known = likeliest.get(kind);
    if (known === undefined || score > (scores[known] ?? -Infinity)) likeliest.set(kind, index);
  }
  if (order.length === count) return 0;
  let dropped = 0;
  for (let index = 0; index < count; index++) {
    const score = scores[index] ?? -Infinity;
    if (score >= floor) continue;
    const kin = likeliest.get(beam.kind[index] ?? 0);
    if (kin === undefined) {
      dropped += Math.exp(score - best);
      continue;
    }
    const more = Math.log1p(Math.exp(score - (scores[kin] ?? -Infinity)));
    scores[kin] = (scores[kin] ?? -Infinity) + more;
    logWeight[kin] = (logWeight[kin] ?? -Infinity) + more;
  }
  beam.retain(order);
  return dropped / (kept + dropped);
}
