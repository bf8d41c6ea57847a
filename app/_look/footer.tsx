import Link from 'next/link';
import { drawnOnce } from './still/drawn-once';
import { speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { SpeechSwitch } from './speech-switch';
import styles from './footer.module.css';

export const Footer = drawnOnce(function Footer() {
  const t = words('look');
  return (
    <footer className={styles.footer}>
      <div className={styles.inner}>
        <p>{t('footer.caution')}</p>
        <ul data-plain data-print="no">
          <li>
            <Link href="/cautions">{t('footer.cautions')}</Link>
          </li>
          <li>
            <Link href="/method">{t('footer.method')}</Link>
          </li>
        </ul>
        <SpeechSwitch speech={speech()} />
      </div>
    </footer>
  );
});
