import styles from './loading.module.css';

/** The outline of a page while it is being worked out. */
export function Loading({ title }: { title: string }) {
  return (
    <main className={styles.main} data-skeleton aria-busy="true">
      <h1>{title}</h1>
      <p role="status">Working it out from the readings …</p>
      <div className={styles.lines} aria-hidden="true">
        <span />
        <span />
        <span />
        <span />
      </div>
    </main>
  );
}
