import { useTranslations } from 'use-intl/react';
import { prefer } from './preference';
import styles from './round-screen.module.css';

/** Large type, and the device's voice: kept on the device. */
export function LookSwitch({ large, spoken }: { large: boolean; spoken: boolean }) {
  const t = useTranslations('bay');
  return (
    <div className={styles.look} role="group" aria-label={t('look.name')} data-needs-script>
      <button type="button" aria-pressed={large} onClick={() => prefer('large', large ? '' : 'yes')}>
        {t('look.large')}
      </button>
      <button type="button" aria-pressed={spoken} onClick={() => prefer('spoken', spoken ? '' : 'yes')}>
        {t('look.spoken')}
      </button>
    </div>
  );
}
