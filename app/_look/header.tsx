import Link from 'next/link';
import { Mark } from './mark';
import { Navigation } from './navigation';
import type { Theme } from './theme';
import { ThemeSwitch } from './theme-switch';
import styles from './header.module.css';

export function Header({ theme }: { theme: Theme }) {
  return (
    <>
      <a className={styles.skip} href="#main">
        Skip to the page
      </a>
      <header className={styles.header}>
        <div className={styles.inner}>
          <Link className={styles.name} href="/">
            <Mark />
            Rehang
          </Link>
          <Navigation />
          <ThemeSwitch theme={theme} />
        </div>
      </header>
    </>
  );
}
