import { dimensionName } from '@/lib/measure/dimension';
import { agreeing, disagreements } from '../agreement';
import type { Column } from '../columns';
import { setupKey, setupName, type Lines } from '../cross';
import type { Draft } from '../draft';

interface OneOf {
  column: Column;
  of: (draft: Draft) => string | null;
  one: string;
}

const ONE_OF: readonly OneOf[] = [
  { column: 'stage', of: (d) => d.stage, one: 'A setup belongs to one round' },
  { column: 'attempt', of: (d) => String(d.attempt), one: 'A setup belongs to one round' },
  { column: 'gauge', of: (d) => d.gauge, one: 'A setup is one gauge' },
  { column: 'technician', of: (d) => d.technician, one: 'A setup is hung by one technician' },
];

/** A setup is one setting and hanging of one gauge by one technician in one round, at one point a side. */
export function checkSetups(lines: Lines): void {
  for (const group of lines.by(setupKey).values()) {
    for (const { column, of, one } of ONE_OF) {
      for (const found of disagreements(group, of)) {
        const message = `${setupName(found.odd)} has ${column} ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}. ${one}: correct the ${column}, or give this setup its own label.`;
        lines.refuse(found.odd, column, sentence(message), found.says);
      }
    }
  }
  for (const group of lines
    .by((d) => (d.quantity === 'height' ? `${setupKey(d)}\n${d.side ?? ''}` : null))
    .values()) {
    for (const found of disagreements(group, (d) => d.point)) {
      const message = `${setupName(found.odd)} reads the height of point ${found.says} here and of ${found.most} on ${agreeing(found, lines.placeOf)}. A gauge hangs at one station: give each hanging its own setup label.`;
      lines.refuse(found.odd, 'point', sentence(message), found.says);
    }
  }
  for (const group of lines
    .by((d) => (d.quantity === 'length' ? `${setupKey(d)}\n${d.point}` : null))
    .values()) {
    for (const found of disagreements(group, (d) => d.nominal)) {
      const message = `nominal_mm of ${dimensionName(found.odd)} is ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}, in one setup. A gauge is set to one length: correct it, or give each setting its own setup label.`;
      lines.refuse(found.odd, 'nominal_mm', message, found.says);
    }
  }
  for (const group of lines.by((d) => `${setupKey(d)}\n${d.side ?? ''}`).values()) {
    for (const found of disagreements(group, (d) => d.cause)) {
      const message = `The cause is ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}, for the same setup and side. A re-check proves one cause: correct it.`;
      lines.refuse(found.odd, 'cause', message, found.says);
    }
  }
}

/** One gauge is of one kind wherever it is named. */
export function checkGauges(lines: Lines): void {
  for (const group of lines.by((d) => d.gauge).values()) {
    for (const found of disagreements(group, (d) => d.gaugeKind)) {
      const message = `Gauge ${found.odd.gauge} is of kind ${found.says} here and ${found.most} on ${agreeing(found, lines.placeOf)}. Correct the kind or the asset tag.`;
      lines.refuse(found.odd, 'gauge_kind', message, found.says);
    }
  }
}

/** No reading is there twice: repeats of a dimension in a setup have different numbers. */
export function checkRepeats(lines: Lines): void {
  for (const group of lines
    .by((d) => (d.repeat === null ? null : `${setupKey(d)}\n${dimensionName(d)}`))
    .values()) {
    const first = new Map<number | null, Draft>();
    for (const draft of group) {
      const earlier = first.get(draft.repeat);
      if (earlier === undefined) {
        first.set(draft.repeat, draft);
        continue;
      }
      const message = `Repeat ${draft.repeat ?? ''} of ${dimensionName(draft)} in ${setupName(draft)} is on ${lines.placeOf(earlier)} already. Remove one of the lines, or number the repeats.`;
      lines.refuse(draft, 'repeat', message, draft.repeat);
    }
  }
}

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
