import Link from 'next/link';
import { drawnOnce } from './still/drawn-once';
import { words } from '@/app/_words/words';
import { Mark } from './mark';
import { Navigation } from './navigation';
import type { Theme } from './theme';
import { ThemeSwitch } from './theme-switch';
import styles from './header.module.css';

interface HeaderProps {
  theme: Theme;
  pages: readonly (readonly [href: string, name: string])[];
  /** Code of whoever is signed in, or null. */
  who: string | null;
}

export const Header = drawnOnce(function Header({ theme, pages, who }: HeaderProps) {
  const t = words('look');
  return (
    <>
      <a className={styles.skip} href="#main">
        {t('skip')}
      </a>
      <header className={styles.header}>
        <div className={styles.inner}>
          <Link className={styles.name} href="/">
            <Mark />
            Rehang
          </Link>
          {pages.length > 0 && <Navigation name={t('pages')} pages={pages} />}
          <div className={styles.end} data-print="no">
            {who !== null && <SignedIn who={who} />}
            <ThemeSwitch theme={theme} />
          </div>
        </div>
      </header>
    </>
  );
});

function SignedIn({ who }: { who: string }) {
  const t = words('look');
  return (
    <>
      <Link className={styles.who} href="/account" aria-label={t('account', { who })}>
        {who}
      </Link>
      <form action="/sign-out" method="post">
        <button type="submit" className={styles.out}>
          {t('signOut')}
        </button>
      </form>
    </>
  );
}
