'use client';

import Link from 'next/link';
import { useState } from 'react';
import button from '@/app/_look/button.module.css';
import styles from './confirm-form.module.css';

/** Loads the file that was checked. Works without scripts; with them it says that it is at work. */
export function ConfirmForm({ action, readings }: { action: string; readings: number }) {
  const [busy, setBusy] = useState(false);
  return (
    <form className={styles.form} action={action} method="post" onSubmit={() => setBusy(true)}>
      <button type="submit" className={button.strong} disabled={busy}>
        Load {readings.toLocaleString('en-GB')} readings
      </button>
      <Link href="/load" className={button.button}>
        Do not load it
      </Link>
      <p role="status">{busy && 'Storing the readings …'}</p>
      {busy && <progress className={styles.progress} aria-label="Storing the readings" />}
    </form>
  );
}
