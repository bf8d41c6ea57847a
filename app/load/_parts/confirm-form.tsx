'use client';

import Link from 'next/link';
import { useState } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import styles from './confirm-form.module.css';

/** Loads the file that was checked. Works without scripts; with them it says that it is at work. */
export function ConfirmForm({ action, readings }: { action: string; readings: number }) {
  const t = useTranslations('upload');
  const [busy, setBusy] = useState(false);
  return (
    <form className={styles.form} action={action} method="post" onSubmit={() => setBusy(true)}>
      <button type="submit" className={button.strong} disabled={busy}>
        {t('confirm.load', { n: readings })}
      </button>
      <Link href="/load" className={button.button}>
        {t('confirm.leave')}
      </Link>
      <p role="status">{busy && t('confirm.storing')}</p>
      {busy && <progress className={styles.progress} aria-label={t('confirm.progress')} />}
    </form>
  );
}
