import type { ReactNode } from 'react';
import styles from './page.module.css';

export interface PageProps {
  title: ReactNode;
  /** One or two sentences under the title: what this page answers. */
  lead?: ReactNode;
  /** The way back up, where the page has a list above it. */
  above?: ReactNode;
  /** Links and buttons that act on the whole page. */
  actions?: ReactNode;
  children: ReactNode;
}

/** The frame of every page: the main landmark, its one first heading and its parts below each other. */
export function PageFrame({ title, lead, above, actions, children }: PageProps) {
  return (
    <main id="main" tabIndex={-1} className={styles.main}>
      <div className={styles.head}>
        <div>
          {above !== undefined && (
            <p className={styles.above} data-print="no">
              {above}
            </p>
          )}
          <h1>{title}</h1>
          {lead !== undefined && <p className={styles.lead}>{lead}</p>}
        </div>
        {actions !== undefined && (
          <div className={styles.actions} data-print="no">
            {actions}
          </div>
        )}
      </div>
      {children}
    </main>
  );
}
