import Link from 'next/link';
import button from './button.module.css';
import styles from './pager.module.css';
import { grouped } from '@/app/_words/numbers';

interface PagerProps {
  page: number;
  pages: number;
  /** Address of a page by its number. */
  to: (page: number) => string;
}

export function Pager({ page, pages, to }: PagerProps) {
  if (pages <= 1) return null;
  return (
    <nav className={styles.pager} aria-label="Pages of the list" data-print="no">
      <Step to={page > 1 ? to(1) : null} name="First" />
      <Step to={page > 1 ? to(page - 1) : null} name="Previous" />
      <p>
        Page {grouped(page)} of {grouped(pages)}
      </p>
      <Step to={page < pages ? to(page + 1) : null} name="Next" />
      <Step to={page < pages ? to(pages) : null} name="Last" />
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
