import { readingKey, settingOf, typedLengths, type EntryBody, type Prompt, type Target } from '@/lib/bay';
import { NOT_YET } from './straight-on';
import { DoneAlready, type Standing } from '@/app/bay/_device/standing';
import { withoutRoundingNoise } from '@/lib/measure/deviation';

type ReadPrompt = Extract<Prompt, { do: 'read' }>;

/** Further from what was set than any damage or slip is likely to bring it, mm: a digit too many, most likely. */
const FAR = 150;

export type Typed =
  | { is: 'readings'; values: number[] }
  | { is: 'none' }
  | { is: 'too-many'; given: number }
  | { is: 'far'; value: number };

/** What was typed for these readings. @param sure true where the same was typed before and asked about. */
export function typedFor(
  text: string,
  targets: readonly Target[],
  { units, clearance, sure }: { units: 'mm' | 'in'; clearance: number; sure: boolean },
): Typed {
  const values = typedLengths(text, units)?.map(withoutRoundingNoise) ?? null;
  if (values === null) return { is: 'none' };
  if (values.length > targets.length) return { is: 'too-many', given: values.length };
  const far = values.find((value, at) => {
    const target = targets[at];
    return target !== undefined && Math.abs(value - settingOf(target.dimension, clearance)) > FAR;
  });
  return far !== undefined && !sure ? { is: 'far', value: far } : { is: 'readings', values };
}

/** The entries of numbers that were typed at once; what a tracking gauge reads as well is a setting of its own. */
export const readingBodies =
  ({ setup }: ReadPrompt, targets: readonly Target[], values: readonly number[], me: string) =>
  ({ record, labels }: Standing): EntryBody[] => {
    const bodies: EntryBody[] = [];
    const { gauge, gaugeKind } = setup;
    const hand = setup.hand === me ? null : setup.hand;
    const hang = (place: string): string => {
      const label = labels();
      bodies.push({ kind: 'hang', setup: label, place, gauge, gaugeKind, hand });
      return label;
    };
    const own = setup.label === NOT_YET ? hang(setup.place) : setup.label;
    values.forEach((value, at) => {
      const target = targets[at];
      if (target === undefined) return;
      const { place, dimension, repeat } = target;
      const { quantity, point, side, nominal } = dimension;
      const read = (label: string) =>
        bodies.push({
          kind: 'read',
          setup: label,
          repeat,
          value,
          dimension: { quantity, point, side, nominal },
        });
      if (place.key !== setup.place) {
        read(hang(place.key));
        return;
      }
      const there = record.setups
        .find(({ label }) => label === own)
        ?.readings.get(readingKey(dimension, repeat));
      // The same number again is the same reading; another one is kept beside it, to be settled.
      if (there?.value !== value) read(own);
    });
    if (bodies.length === 0) throw new DoneAlready();
    return bodies;
  };
