import { dimensionName } from '../dimension';
import { grouped } from '../grouped';
import { DEFAULT_TOLERANCE } from '../trade';
import type { Reading } from '../types';
import { setupKey } from './cross';
import { isComplete, type Draft } from './draft';

/** The drafts of a file without faults as readings: what no line states is what the contract says by default. */
export function completed(drafts: Draft[]): Reading[] {
  numberRepeats(drafts);
  nameKinds(drafts);
  for (const draft of drafts) {
    draft.zero ??= false;
    draft.tolerance ??= DEFAULT_TOLERANCE;
    draft.clearance ??= 0;
  }
  return drafts.filter(isComplete);
}

/** Repeats without a number are numbered in file order, past the numbers that are taken. */
function numberRepeats(drafts: readonly Draft[]): void {
  if (drafts.every((draft) => draft.repeat !== null)) return;
  for (const group of grouped(drafts, (d) => `${setupKey(d)}\n${dimensionName(d)}`).values()) {
    const taken = new Set(group.map((draft) => draft.repeat));
    let next = 1;
    for (const draft of group) {
      if (draft.repeat !== null) continue;
      while (taken.has(next)) next++;
      draft.repeat = next++;
    }
  }
}

/** A gauge whose kind is stated on one line is of that kind on all. */
function nameKinds(drafts: readonly Draft[]): void {
  const kinds = new Map(drafts.map((draft) => [draft.gauge, null as Draft['gaugeKind']]));
  for (const { gauge, gaugeKind } of drafts) if (gaugeKind !== null) kinds.set(gauge, gaugeKind);
  for (const draft of drafts) draft.gaugeKind ??= kinds.get(draft.gauge) ?? null;
}
