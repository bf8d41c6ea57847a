import Link from 'next/link';
import button from './button.module.css';
import styles from './pager.module.css';
import { grouped } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';

interface PagerProps {
  page: number;
  pages: number;
  /** Address of a page by its number. */
  to: (page: number) => string;
}

export function Pager({ page, pages, to }: PagerProps) {
  if (pages <= 1) return null;
  const t = words('look');
  return (
    <nav className={styles.pager} aria-label={t('pager.name')} data-print="no">
      <Step to={page > 1 ? to(1) : null} name={t('pager.first')} />
      <Step to={page > 1 ? to(page - 1) : null} name={t('pager.previous')} />
      <p>{t('pager.where', { page: grouped(page), pages: grouped(pages) })}</p>
      <Step to={page < pages ? to(page + 1) : null} name={t('pager.next')} />
      <Step to={page < pages ? to(pages) : null} name={t('pager.last')} />
    </nav>
  );
}

function Step({ to, name }: { to: string | null; name: string }) {
  return to === null ? (
    <span className={styles.still}>{name}</span>
  ) : (
    <Link className={button.button} href={to} prefetch={false}>
      {name}
    </Link>
  );
}
