import type { ReactNode } from 'react';
import styles from './empty.module.css';

interface EmptyProps {
  title: string;
  children: ReactNode;
  action?: ReactNode;
}

/** What stands where nothing has been measured yet: what will be here, and how to get it. */
export function Empty({ title, children, action }: EmptyProps) {
  return (
    <section className={styles.empty} aria-labelledby="empty-title">
      <svg className={styles.picture} viewBox="0 0 360 90" aria-hidden="true" focusable="false">
        <path d="M10 60h340" className={styles.datum} />
        {[50, 135, 225, 310].map((x) => (
          <g key={x} className={styles.gauge}>
            <path d={`M${x - 22} 16v34M${x + 22} 16v34M${x - 30} 50h60M${x} 50v16`} />
          </g>
        ))}
      </svg>
      <h2 id="empty-title">{title}</h2>
      <div className={styles.text}>{children}</div>
      {action}
    </section>
  );
}
