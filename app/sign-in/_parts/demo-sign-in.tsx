import button from '@/app/_look/button.module.css';
import type { DemoAccount } from '@/lib/identity/demo';
import styles from './demo-sign-in.module.css';

const AS: Record<DemoAccount['role'], string> = {
  manager: 'the manager',
  trainer: 'the trainer',
  technician: 'a technician',
};

/** One press signs in as one of the three users. */
export function DemoSignIn({ accounts, to }: { accounts: readonly DemoAccount[]; to: string }) {
  return (
    <ul data-plain className={styles.list}>
      {accounts.map(({ signInName, password, role, name }) => (
        <li key={signInName}>
          <form action="/sign-in/try" method="post">
            <input type="hidden" name="to" value={to} />
            <input type="hidden" name="name" value={signInName} />
            <input type="hidden" name="password" value={password} />
            <button type="submit" className={button.button}>
              Sign in as {AS[role]}, {name}
            </button>
          </form>
        </li>
      ))}
    </ul>
  );
}
