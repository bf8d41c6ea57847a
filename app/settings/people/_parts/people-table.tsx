import button from '@/app/_look/button.module.css';
import { Table, type Column } from '@/app/_look/table';
import { address } from '@/app/_words/address';
import { roleName } from '@/app/_words/people';
import type { PersonAccount } from '@/lib/access';
import styles from './people-table.module.css';
import { words } from '@/app/_words/words';

interface PeopleTableProps {
  people: PersonAccount[];
  /** Code of whoever looks at the page. */
  viewer: string;
  /** In the demo shop nobody is invited or signed out: it is open to all. */
  demo: boolean;
}

export function PeopleTable({ people, viewer, demo }: PeopleTableProps) {
  const t = words('settings');
  return (
    <Table
      caption={t('people.table.caption')}
      rows={people}
      rowKey={({ code }) => code}
      columns={[
        { key: 'code', head: t('people.table.code'), names: true, cell: ({ code }) => code },
        {
          key: 'name',
          head: t('people.table.name'),
          cell: ({ name, removed }) => (removed ? t('people.table.removed') : name),
        },
        { key: 'role', head: t('people.table.role'), cell: ({ role }) => roleName(role) },
        { key: 'signIn', head: t('people.table.signsIn'), cell: signsIn },
        ...(demo ? [] : [acts(viewer)]),
      ]}
    />
  );
}

/** In the order of use: invite, or let somebody choose a new password; sign out on every device. */
const acts = (viewer: string): Column<PersonAccount> => ({
  key: 'do',
  head: words('settings')('people.table.do'),
  cell: ({ code, active, removed, signInName }) => {
    if (removed || !active) return '';
    const t = words('settings');
    return (
      <div className={styles.acts}>
        <a
          className={button.button}
          href={address('/settings/people/export', { code })}
          download
          aria-label={t('people.table.fileOf', { code })}
        >
          {t('people.table.file', { code })}
        </a>
        <Act to="/settings/people/invite" code={code}>
          {t(signInName === null ? 'people.table.invite' : 'people.table.newPassword', { code })}
        </Act>
        {signInName !== null && code !== viewer && (
          <Act to="/settings/people/sign-out" code={code}>
            {t('people.table.signOut', { code })}
          </Act>
        )}
      </div>
    );
  },
});

function Act({ to, code, children }: { to: string; code: string; children: React.ReactNode }) {
  return (
    <form action={to} method="post">
      <input type="hidden" name="code" value={code} />
      <button type="submit" className={button.button}>
        {children}
      </button>
    </form>
  );
}

function signsIn({ active, signInName, secondFactor, invitedUntil, removed }: PersonAccount): string {
  const t = words('settings');
  if (removed) return t('people.signsIn.no');
  if (!active) return t('people.signsIn.gone');
  if (signInName === null)
    return t(invitedUntil === null ? 'people.signsIn.notYet' : 'people.signsIn.invited');
  return t(secondFactor ? 'people.signsIn.withSecondFactor' : 'people.signsIn.as', { signInName });
}
