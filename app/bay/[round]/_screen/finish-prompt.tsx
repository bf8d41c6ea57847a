import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { useFocus } from './use-focus';
import styles from './prompt.module.css';

interface FinishPromptProps {
  clashes: number;
  finish: () => void;
}

/** Everything is read or left out. */
export function FinishPrompt({ clashes, finish }: FinishPromptProps) {
  const t = useTranslations('bay');
  const control = useFocus<HTMLButtonElement>('finish');
  return (
    <>
      <h2 className={styles.title}>{t('finish.title')}</h2>
      <p className={styles.how}>{t('finish.ready')}</p>
      {clashes > 0 && <p className={styles.how}>{t('finish.clashes', { n: clashes })}</p>}
      <div className={styles.row}>
        <button ref={control} data-first type="button" className={button.strong} onClick={finish}>
          {t('finish.do')}
        </button>
      </div>
    </>
  );
}

/** What stands in place of the prompts once the round is finished. */
export function Finished({ job, waiting }: { job: string; waiting: boolean }) {
  const t = useTranslations('bay');
  return (
    <>
      <h2 className={styles.title}>{t('finish.done')}</h2>
      <p className={styles.how}>{t('finish.doneText')}</p>
      {waiting && <p className={styles.how}>{t('finish.doneWaiting')}</p>}
      <div className={styles.row}>
        <a className={button.strong} href={`/jobs/${encodeURIComponent(job)}`}>
          {t('finish.job', { job })}
        </a>
      </div>
    </>
  );
}
