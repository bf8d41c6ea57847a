'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import styles from './navigation.module.css';

export function Navigation({
  name,
  pages,
}: {
  name: string;
  pages: readonly (readonly [href: string, name: string])[];
}) {
  const path = usePathname();
  return (
    <nav className={styles.navigation} aria-label={name} data-print="no">
      <ul data-plain>
        {pages.map(([href, page]) => (
          <li key={href}>
            <Link href={href} prefetch={false} aria-current={standsOn(path, href)}>
              {page}
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
