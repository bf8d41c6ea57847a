import Link from 'next/link';
import type { ReactNode } from 'react';
import { useTranslations } from 'use-intl/react';
import { useSpeech } from '@/app/_words/speech/device';
import type { BayHead } from '@/lib/bay';
import { settingText } from './names';
import styles from './round-screen.module.css';

/** Which round this is, and how it is shown. */
export function ScreenHead({ head, children }: { head: BayHead; children: ReactNode }) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const { job, stage, attempt, sheet, clearance } = head;
  return (
    <div className={styles.head}>
      <div>
        <h1>{t('round.name', { job, stage, attempt })}</h1>
        <p>
          {t('round.facts', {
            sheet: sheet.name,
            revision: sheet.revision,
            clearance: settingText(clearance, to),
          })}{' '}
          <Link href="/bay" prefetch={false}>
            {t('round.all')}
          </Link>
        </p>
      </div>
      {children}
    </div>
  );
}
