import { agreeing, disagreements } from '../agreement';
import { roundKey, roundName, type Lines } from '../cross';

/** Every height of a round has the same clearance; a height that states none takes that of the round. */
export function checkClearance(lines: Lines): void {
  for (const group of lines.by((d) => (d.quantity === 'height' ? roundKey(d) : null)).values()) {
    for (const found of disagreements(group, (d) => d.clearance)) {
      const message = `The clearance is ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}, in ${roundName(found.odd)}. One clearance is added to every height of a round: correct it, or make it another attempt.`;
      lines.refuse(found.odd, 'clearance_mm', message, found.says);
    }
    const clearance = group.find((d) => d.clearance !== null && lines.isSound(d))?.clearance ?? null;
    if (clearance !== null) for (const draft of group) draft.clearance ??= clearance;
  }
}
