import type { Call } from '@/lib/assess';
import styles from './station-picture.module.css';

/** The tip of a bar: each call has a shape of its own. */
export function MarkShape({ call, x, y }: { call: Call; x: number; y: number }) {
  switch (call) {
    case 'nothing-found':
      return <circle className={styles.hollow} cx={x} cy={y} r={5.5} />;
    case 'likely-gauge':
      return <path className={styles.filled} d={`M${x - 11} ${y - 2.5}h22v5h-22z`} />;
    case 'likely-body':
      return <rect className={styles.filled} x={x - 7} y={y - 7} width={14} height={14} />;
    case 'likely-both':
      return <path className={styles.filled} d={`M${x} ${y - 10}l10 10l-10 10l-10 -10z`} />;
    case 'undecided':
      return <path className={styles.hollow} d={`M${x - 7} ${y - 7}l14 14m0 -14l-14 14`} />;
  }
}
