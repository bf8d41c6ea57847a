import { Tag } from '@/app/_look/tag';
import { words } from '@/app/_words/words';
import { signed } from '@/app/_words/numbers';
import styles from './dimension-tables.module.css';

/** A deviation in mm, said to be out where it is. */
export function DeviationCell({ deviation, within }: { deviation: number; within: boolean }) {
  return (
    <span className={styles.deviation}>
      {!within && <Tag name="out">{words('jobs')('cells.out')}</Tag>}
      <b>{signed(deviation)}</b>
    </span>
  );
}
