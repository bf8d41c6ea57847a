import type { ReactNode } from 'react';
import { classNames } from './class-names';
import { Glyph, type GlyphName } from './glyph';
import styles from './tag.module.css';

interface TagProps {
  name: GlyphName;
  /** Whatever its shape says elsewhere, here it is nothing to be calm about. */
  doubtful?: boolean;
  children: ReactNode;
}

/** A verdict or state in a word, with its shape and tint. */
export function Tag({ name, doubtful = false, children }: TagProps) {
  return (
    <span className={classNames(styles.tag, styles[doubtful ? 'undecided' : TINTS[name]])}>
      <Glyph name={name} />
      {children}
    </span>
  );
}

const TINTS: Record<GlyphName, 'calm' | 'gauge' | 'body' | 'both' | 'undecided'> = {
  neither: 'calm',
  within: 'calm',
  remark: 'calm',
  open: 'calm',
  rising: 'calm',
  falling: 'calm',
  gauge: 'gauge',
  body: 'body',
  out: 'body',
  both: 'both',
  undecided: 'undecided',
  caution: 'undecided',
};
