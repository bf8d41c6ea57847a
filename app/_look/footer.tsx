import Link from 'next/link';
import styles from './footer.module.css';

export function Footer() {
  return (
    <footer className={styles.footer}>
      <div className={styles.inner}>
        <p>
          A verdict is about a reading; it never clears a structure. Repair follows the vehicle maker’s
          procedure, local code and the judgement of a licensed or certified person.
        </p>
        <ul data-plain data-print="no">
          <li>
            <Link href="/cautions">Cautions in full</Link>
          </li>
          <li>
            <Link href="/method">How the verdicts are reached</Link>
          </li>
        </ul>
      </div>
    </footer>
  );
}
