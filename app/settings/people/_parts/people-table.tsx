import button from '@/app/_look/button.module.css';
import { Table, type Column } from '@/app/_look/table';
import { address } from '@/app/_words/address';
import { ROLE_NAMES } from '@/app/_words/people';
import type { PersonAccount } from '@/lib/access';
import styles from './people-table.module.css';

interface PeopleTableProps {
  people: PersonAccount[];
  /** Code of whoever looks at the page. */
  viewer: string;
  /** In the demo shop nobody is invited or signed out: it is open to all. */
  demo: boolean;
}

export function PeopleTable({ people, viewer, demo }: PeopleTableProps) {
  return (
    <Table
      caption="By code"
      rows={people}
      rowKey={({ code }) => code}
      columns={[
        { key: 'code', head: 'Code', names: true, cell: ({ code }) => code },
        { key: 'name', head: 'Name', cell: ({ name, removed }) => (removed ? 'removed' : name) },
        { key: 'role', head: 'Role', cell: ({ role }) => ROLE_NAMES[role] },
        { key: 'signIn', head: 'Signs in', cell: signsIn },
        ...(demo ? [] : [acts(viewer)]),
      ]}
    />
  );
}

/** In the order of use: invite, or let somebody choose a new password; sign out on every device. */
const acts = (viewer: string): Column<PersonAccount> => ({
  key: 'do',
  head: 'Do',
  cell: ({ code, active, removed, signInName }) =>
    removed || !active ? (
      ''
    ) : (
      <div className={styles.acts}>
        <a
          className={button.button}
          href={address('/settings/people/export', { code })}
          download
          aria-label={`All about ${code} as a file`}
        >
          File on {code}
        </a>
        <Act to="/settings/people/invite" code={code}>
          {signInName === null ? `Invite ${code}` : `New password for ${code}`}
        </Act>
        {signInName !== null && code !== viewer && (
          <Act to="/settings/people/sign-out" code={code}>
            Sign {code} out
          </Act>
        )}
      </div>
    ),
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
  if (removed) return 'no';
  if (!active) return 'no longer works here';
  if (signInName === null) return invitedUntil === null ? 'not yet' : 'invited';
  return `as ${signInName}${secondFactor ? ', with second factor' : ''}`;
}
