import { dimensionName } from '@/lib/measure/dimension';
import { mayBeDiagonal, sharedLetters } from '@/lib/measure/shared-letters';
import { agreeing, disagreements } from '../agreement';
import { sheetName, sheetScope, type Lines } from '../cross';
import type { Draft } from '../draft';
import type { KnownSheets } from '../known-sheets';

/**
 * The width of a vehicle that a straight length and its diagonal imply, mm. In plan, diagonal² − straight² is the
 * product of the widths at both ends.
 */
const WIDTH = { low: 300, high: 2_800 };

/**
 * A length has one sheet value; one whose letters both sides share, with no side said, may have two: of the
 * straight length and of the diagonal. Groups hold the lines of one sheet and one name.
 */
export function checkLengths(lines: Lines, known: KnownSheets): void {
  const shared = new Map([...lines.by(sheetScope)].map(([scope, group]) => [scope, sharedLetters(group)]));
  for (const group of lines
    .by((d) => (d.quantity === 'length' ? `${sheetScope(d)}\n${d.point}` : null))
    .values()) {
    const [first] = group;
    if (first === undefined || known.of(first).length > 0) continue;
    const letters = shared.get(sheetScope(first)) ?? new Set<string>();
    const pair = mayBeDiagonal(first.point, letters) ? straightAndDiagonal(group) : null;
    if (pair === null) refuseOther(lines, group);
    else refuseThird(lines, group, pair);
    fillNominal(lines, group);
  }
}

/** The two most frequent sheet values, where they can be a straight length and its diagonal. */
function straightAndDiagonal(group: readonly Draft[]): [number, number] | null {
  const counts = new Map<number, number>();
  for (const { nominal } of group) if (nominal !== null) counts.set(nominal, (counts.get(nominal) ?? 0) + 1);
  const [a, b] = [...counts].sort(([, m], [, n]) => n - m).map(([nominal]) => nominal);
  if (a === undefined || b === undefined) return null;
  const width = Math.sqrt(Math.abs(a * a - b * b));
  return width >= WIDTH.low && width <= WIDTH.high ? [a, b] : null;
}

function refuseOther(lines: Lines, group: readonly Draft[]): void {
  for (const found of disagreements(group, (d) => d.nominal)) {
    const message = `nominal_mm of ${dimensionName(found.odd)} is ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}, for the same ${sheetName(found.odd)}. Correct it; where both sides share letters, say the sides, such as K.L-N.R.`;
    lines.refuse(found.odd, 'nominal_mm', message, found.says);
  }
}

function refuseThird(lines: Lines, group: readonly Draft[], [a, b]: [number, number]): void {
  for (const draft of group) {
    if (draft.nominal === null || draft.nominal === a || draft.nominal === b) continue;
    const message = `nominal_mm of ${dimensionName(draft)} is ${draft.nominal} here, but ${a} and ${b} (straight and diagonal) on most lines of the same ${sheetName(draft)}. Correct it, or say the sides, such as K.L-N.R.`;
    lines.refuse(draft, 'nominal_mm', message, draft.nominal);
  }
}

/** A line without a sheet value takes it from the others, where only one is possible. */
function fillNominal(lines: Lines, group: readonly Draft[]): void {
  const sound = group.filter((draft) => lines.isSound(draft));
  const values = new Set(sound.flatMap((draft) => (draft.nominal === null ? [] : [draft.nominal])));
  const [only] = values;
  for (const draft of sound) {
    if (draft.nominal !== null) continue;
    if (values.size === 1) draft.nominal = only ?? null;
    else if (values.size > 1) refuseUnclear(lines, draft, [...values]);
  }
}

export function refuseUnclear(lines: Lines, draft: Draft, values: readonly number[]): void {
  const message = `${dimensionName(draft)} can be the straight length or the diagonal of ${sheetName(draft)} (${values.join(' or ')} mm). Enter nominal_mm, or say the sides, such as K.L-N.R.`;
  lines.refuse(draft, 'nominal_mm', message.charAt(0).toUpperCase() + message.slice(1), null);
}
