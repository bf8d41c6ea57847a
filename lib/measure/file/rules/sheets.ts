import { dimensionName } from '@/lib/measure/dimension';
import { agreeing, disagreements } from '../agreement';
import type { Column } from '../columns';
import { sheetName, sheetScope, type Lines } from '../cross';
import type { Draft } from '../draft';
import type { KnownSheets } from '../known-sheets';
import type { KnownDimension } from '../options';
import { refuseUnclear } from './lengths';

interface SheetValue {
  column: Column;
  of: (draft: Draft) => number | string | null;
  known: (dimension: KnownDimension) => number | string | null;
}

const yesNo = (zero: boolean | null | undefined) => (zero === true ? 'yes' : zero === false ? 'no' : null);

const SHEET_VALUES: readonly SheetValue[] = [
  { column: 'nominal_mm', of: (d) => d.nominal, known: (k) => k.nominal },
  { column: 'station_mm', of: (d) => d.station, known: (k) => k.station ?? null },
  { column: 'tolerance_mm', of: (d) => d.tolerance, known: (k) => k.tolerance ?? null },
  { column: 'zero', of: (d) => yesNo(d.zero), known: (k) => yesNo(k.zero) },
  { column: 'section', of: (d) => d.section, known: (k) => k.section ?? null },
];

/** A job is measured against one sheet; lines that do not name it take it from those that do. */
export function checkJobSheets(lines: Lines): void {
  for (const group of lines.by((d) => d.job).values()) {
    for (const found of disagreements(group, (d) => d.sheet)) {
      const message = `Job ${found.odd.job} is measured against sheet ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}. A job has one sheet: correct it.`;
      lines.refuse(found.odd, 'sheet', message, found.says);
    }
    const sheet = group.find((d) => d.sheet !== null && lines.isSound(d))?.sheet ?? null;
    if (sheet !== null) for (const draft of group) draft.sheet ??= sheet;
  }
}

/** Lines of a known sheet take its values, and do not contradict them. */
export function checkKnownSheets(lines: Lines, sheets: KnownSheets): void {
  for (const draft of lines.sound()) {
    const candidates = sheets.of(draft);
    if (candidates.length === 0) continue;
    const known =
      candidates.length === 1 ? candidates[0] : candidates.find((k) => k.nominal === draft.nominal);
    if (known !== undefined) takeFrom(lines, draft, known);
    else if (draft.nominal === null)
      refuseUnclear(
        lines,
        draft,
        candidates.map((k) => k.nominal),
      );
    else refuseUnknown(lines, draft, candidates);
  }
}

/** What a sheet says of a dimension is the same on every line, and what it says once holds for every line. */
export function checkSheets(lines: Lines): void {
  for (const group of lines.by(dimensionInSheet).values()) {
    for (const value of SHEET_VALUES) {
      refuseOdd(
        lines,
        group.filter((d) => lines.isSound(d)),
        value,
      );
    }
    fillIn(group.filter((d) => lines.isSound(d)));
    refuseWithoutNominal(lines, group);
  }
}

function dimensionInSheet(draft: Draft): string {
  const name = `${sheetScope(draft)}\n${dimensionName(draft)}`;
  return draft.quantity === 'length' ? `${name} ${draft.nominal ?? ''}` : name;
}

function refuseOdd(lines: Lines, group: readonly Draft[], { column, of }: SheetValue): void {
  for (const found of disagreements(group, of)) {
    const message = `${column} of ${dimensionName(found.odd)} is ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}, for the same ${sheetName(found.odd)}. Correct it, or give another sheet another name.`;
    lines.refuse(found.odd, column, message, found.says);
  }
}

function takeFrom(lines: Lines, draft: Draft, known: KnownDimension): void {
  for (const { column, of, known: knownOf } of SHEET_VALUES) {
    const says = of(draft);
    const stated = knownOf(known);
    if (says === null || stated === null || says === stated) continue;
    const message = `${column} of ${dimensionName(draft)} is ${says} here and ${stated} in ${sheetName(draft)} as it is known. Correct it, or give a new issue of the sheet a new name.`;
    lines.refuse(draft, column, message, says);
  }
  draft.nominal ??= known.nominal;
  draft.tolerance ??= known.tolerance ?? null;
  draft.zero ??= known.zero ?? null;
  draft.section ??= known.section ?? null;
}

function refuseUnknown(lines: Lines, draft: Draft, candidates: readonly KnownDimension[]): void {
  const stated = candidates.map((k) => k.nominal).join(' or ');
  const message = `nominal_mm of ${dimensionName(draft)} is ${draft.nominal ?? ''} here and ${stated} in ${sheetName(draft)} as it is known. Correct it, or give a new issue of the sheet a new name.`;
  lines.refuse(draft, 'nominal_mm', message, draft.nominal);
}

function fillIn(group: readonly Draft[]): void {
  const nominal = stated(group, (d) => d.nominal);
  const tolerance = stated(group, (d) => d.tolerance);
  const zero = stated(group, (d) => d.zero);
  const section = stated(group, (d) => d.section);
  for (const draft of group) {
    draft.nominal ??= nominal;
    draft.tolerance ??= tolerance;
    draft.zero ??= zero;
    draft.section ??= section;
  }
}

function stated<T>(group: readonly Draft[], of: (draft: Draft) => T | null): T | null {
  for (const draft of group) {
    const value = of(draft);
    if (value !== null) return value;
  }
  return null;
}

function refuseWithoutNominal(lines: Lines, group: readonly Draft[]): void {
  for (const draft of group) {
    if (draft.nominal !== null || !lines.isSound(draft)) continue;
    const message = `There is no sheet value for ${dimensionName(draft)}: neither here, nor on another line of ${sheetName(draft)}, nor in a sheet that is known. Enter nominal_mm.`;
    lines.refuse(draft, 'nominal_mm', message, null);
  }
}
