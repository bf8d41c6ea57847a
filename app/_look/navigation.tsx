'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import styles from './navigation.module.css';

const PAGES = [
  ['/', 'Overview'],
  ['/jobs', 'Jobs'],
  ['/technicians', 'Technicians'],
  ['/training', 'Training'],
  ['/gauges', 'Gauges'],
  ['/calibration', 'Calibration'],
  ['/load', 'Load'],
  ['/settings', 'Settings'],
] as const;

export function Navigation() {
  const path = usePathname();
  return (
    <nav className={styles.navigation} aria-label="Pages" data-print="no">
      <ul data-plain>
        {PAGES.map(([href, name]) => (
          <li key={href}>
            <Link href={href} aria-current={standsOn(path, href)}>
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function standsOn(path: string, href: string): 'page' | 'true' | undefined {
  if (path === href) return 'page';
  return href !== '/' && path.startsWith(`${href}/`) ? 'true' : undefined;
}
