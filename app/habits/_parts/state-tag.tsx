import { Glyph, type GlyphName } from '@/app/_look/glyph';
import { classNames } from '@/app/_look/class-names';
import { stateName } from '@/app/_words/habits';
import type { HabitState } from '@/lib/assess/habits';
import styles from './state-tag.module.css';

const GLYPHS: Record<HabitState, GlyphName> = {
  found: 'caution',
  'not found': 'neither',
  'too few readings': 'open',
};

const CLASSES = {
  found: styles.found,
  'not found': styles.not,
  'too few readings': styles.few,
} satisfies Record<HabitState, string | undefined>;

/** A state in a word with its shape; only what was found is set off from the page. */
export function StateTag({ state }: { state: HabitState }) {
  return (
    <span className={classNames(styles.tag, CLASSES[state])}>
      <Glyph name={GLYPHS[state]} />
      {stateName(state)}
    </span>
  );
}
