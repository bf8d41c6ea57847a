import { CALL_GLYPHS, callName } from '@/app/_words/verdicts';
import type { Call } from '@/lib/assess';
import { classNames } from '@/app/_look/class-names';
import { MarkShape } from './mark-shape';
import styles from './station-picture.module.css';

export function Legend({ calls, tilted }: { calls: Call[]; tilted: boolean }) {
  return (
    <ul className={styles.legend} data-plain>
      {calls.map((call) => (
        <li key={call} className={classNames(styles.mark, styles[CALL_GLYPHS[call]])}>
          <Key>
            <MarkShape call={call} x={13} y={13} />
          </Key>
          <span>{callName(call)}</span>
        </li>
      ))}
      <li className={classNames(styles.mark, styles.zero)}>
        <Key>
          <path className={styles.zeroMark} d="M4 21h18l-9 -16z" />
        </Key>
        <span>Zero station</span>
      </li>
      <li>
        <Key>
          <rect className={styles.tolerance} x={1} y={5} width={24} height={16} />
        </Key>
        <span>Tolerance</span>
      </li>
      {tilted && (
        <li>
          <Key>
            <path className={styles.tilt} d="M1 18L25 8" />
          </Key>
          <span>Shift of the datum, estimated from all heights</span>
        </li>
      )}
    </ul>
  );
}

function Key({ children }: { children: React.ReactNode }) {
  return (
    <svg width={26} height={26} viewBox="0 0 26 26" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}
