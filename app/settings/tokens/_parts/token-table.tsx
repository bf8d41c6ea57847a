import button from '@/app/_look/button.module.css';
import { Table } from '@/app/_look/table';
import { day, dayAndTime } from '@/app/_words/times';
import type { ShownToken } from '@/lib/access';
import { SCOPE_WORDS } from './scope-words';

interface TokenTableProps {
  tokens: ShownToken[];
  timeZone: string;
}

export function TokenTable({ tokens, timeZone }: TokenTableProps) {
  return (
    <Table
      caption="Newest first"
      rows={tokens}
      rowKey={({ id }) => String(id)}
      empty="There is none: no program can do anything here."
      columns={[
        { key: 'name', head: 'Name', names: true, cell: ({ name }) => name },
        {
          key: 'may',
          head: 'May',
          cell: ({ scopes }) => scopes.map((scope) => SCOPE_WORDS[scope]).join(', '),
        },
        { key: 'state', head: 'State', cell: (token) => state(token, timeZone) },
        {
          key: 'used',
          head: 'Last used',
          cell: ({ lastUsedAt }) => (lastUsedAt === null ? 'never' : dayAndTime(lastUsedAt, timeZone)),
        },
        { key: 'do', head: 'Do', cell: (token) => (token.works ? <Revoke token={token} /> : '') },
      ]}
    />
  );
}

function state(token: ShownToken, timeZone: string): string {
  if (token.revokedAt !== null) return `revoked on ${day(token.revokedAt, timeZone)}`;
  if (token.expiresAt === null) return 'works';
  return `${token.works ? 'works until' : 'ran out on'} ${day(token.expiresAt, timeZone)}`;
}

function Revoke({ token: { id, name } }: { token: ShownToken }) {
  return (
    <form action="/settings/tokens/revoke" method="post">
      <input type="hidden" name="id" value={id} />
      <button type="submit" className={button.button}>
        Revoke {name}
      </button>
    </form>
  );
}
