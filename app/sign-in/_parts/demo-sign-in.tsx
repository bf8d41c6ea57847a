import button from '@/app/_look/button.module.css';
import type { DemoAccount } from '@/lib/identity/demo';
import styles from './demo-sign-in.module.css';
import { words } from '@/app/_words/words';

/** One press signs in as one of the three users. */
export function DemoSignIn({ accounts, to }: { accounts: readonly DemoAccount[]; to: string }) {
  const t = words('signIn');
  return (
    <ul data-plain className={styles.list}>
      {accounts.map(({ signInName, password, role, name }) => (
        <li key={signInName}>
          <form action="/sign-in/try" method="post">
            <input type="hidden" name="to" value={to} />
            <input type="hidden" name="name" value={signInName} />
            <input type="hidden" name="password" value={password} />
            <button type="submit" className={button.button}>
              {t(`demo.as.${role}`, { name })}
            </button>
          </form>
        </li>
      ))}
    </ul>
  );
}
