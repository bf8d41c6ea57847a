import { dimensionKey } from '@/lib/measure/dimension';
import { agreeing, disagreements } from '../agreement';
import type { Column } from '../columns';
import { sheetName, sheetScope, type Lines } from '../cross';
import type { Draft } from '../draft';
import type { KnownDimension, ReadOptions } from '../options';

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
      const message = `Job ${found.odd.job} is measured against sheet ${found.says} here and ${found.most} on ${agreeing(found)}. A job has one sheet: correct it.`;
      lines.refuse(found.odd, 'sheet', message, found.says);
    }
    const sheet = group.find((d) => d.sheet !== null && lines.isSound(d))?.sheet ?? null;
    if (sheet !== null) for (const draft of group) draft.sheet ??= sheet;
  }
}

/** What a sheet says of a dimension is the same on every line, and what it says once holds for every line. */
export function checkSheets(lines: Lines, knownSheets: ReadOptions['knownSheets']): void {
  for (const group of lines.by((d) => `${sheetScope(d)}\n${dimensionKey(d)}`).values()) {
    const known = knownDimension(group, knownSheets);
    for (const value of SHEET_VALUES) {
      const stated = known === null ? null : value.known(known);
      if (stated === null) refuseOdd(lines, group, value);
      else refuseOther(lines, group, value, stated);
    }
    fillIn(
      group.filter((d) => lines.isSound(d)),
      known,
    );
    refuseWithoutNominal(lines, group);
  }
}

function knownDimension(
  group: readonly Draft[],
  knownSheets: ReadOptions['knownSheets'],
): KnownDimension | null {
  const [first] = group;
  if (first === undefined || first.sheet === null) return null;
  return knownSheets?.(first.sheet)?.get(dimensionKey(first)) ?? null;
}

function refuseOdd(lines: Lines, group: readonly Draft[], { column, of }: SheetValue): void {
  for (const found of disagreements(
    group.filter((d) => lines.isSound(d)),
    of,
  )) {
    const message = `${column} of ${dimensionKey(found.odd)} is ${found.says} here and ${found.most} on ${agreeing(found)}, for the same ${sheetName(found.odd)}. Correct it, or give another sheet another name.`;
    lines.refuse(found.odd, column, message, found.says);
  }
}

function refuseOther(
  lines: Lines,
  group: readonly Draft[],
  { column, of }: SheetValue,
  stated: string | number,
) {
  for (const draft of group) {
    const says = of(draft);
    if (says === null || says === stated) continue;
    const message = `${column} of ${dimensionKey(draft)} is ${says} here and ${stated} in ${sheetName(draft)} as it is known. Correct it, or give a new issue of the sheet a new name.`;
    lines.refuse(draft, column, message, says);
  }
}

function fillIn(group: readonly Draft[], known: KnownDimension | null): void {
  const stated = <T>(of: (draft: Draft) => T | null): T | null => {
    for (const draft of group) {
      const value = of(draft);
      if (value !== null) return value;
    }
    return null;
  };
  const nominal = known?.nominal ?? stated((d) => d.nominal);
  const tolerance = known?.tolerance ?? stated((d) => d.tolerance);
  const zero = known?.zero ?? stated((d) => d.zero);
  const section = known?.section ?? stated((d) => d.section);
  for (const draft of group) {
    draft.nominal ??= nominal;
    draft.tolerance ??= tolerance;
    draft.zero ??= zero;
    draft.section ??= section;
  }
}

function refuseWithoutNominal(lines: Lines, group: readonly Draft[]): void {
  for (const draft of group) {
    if (draft.nominal !== null || !lines.isSound(draft)) continue;
    const message = `There is no sheet value for ${dimensionKey(draft)}: neither here, nor on another line of ${sheetName(draft)}, nor in a sheet that is known. Enter nominal_mm.`;
    lines.refuse(draft, 'nominal_mm', message, null);
  }
}
