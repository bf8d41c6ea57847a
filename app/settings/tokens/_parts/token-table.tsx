import button from '@/app/_look/button.module.css';
import { Table } from '@/app/_look/table';
import { day, dayAndTime } from '@/app/_words/times';
import type { ShownToken } from '@/lib/access';
import { scopeWords } from './scope-words';
import { words } from '@/app/_words/words';

interface TokenTableProps {
  tokens: ShownToken[];
  timeZone: string;
}

export function TokenTable({ tokens, timeZone }: TokenTableProps) {
  const t = words('settings');
  return (
    <Table
      caption={t('tokens.table.caption')}
      rows={tokens}
      rowKey={({ id }) => String(id)}
      empty={t('tokens.table.none')}
      columns={[
        { key: 'name', head: t('tokens.table.name'), names: true, cell: ({ name }) => name },
        {
          key: 'may',
          head: t('tokens.table.may'),
          cell: ({ scopes }) => scopes.map(scopeWords).join(', '),
        },
        { key: 'state', head: t('tokens.table.state'), cell: (token) => state(token, timeZone) },
        {
          key: 'used',
          head: t('tokens.table.used'),
          cell: ({ lastUsedAt }) =>
            lastUsedAt === null ? t('tokens.table.never') : dayAndTime(lastUsedAt, timeZone),
        },
        {
          key: 'do',
          head: t('tokens.table.do'),
          cell: (token) => (token.works ? <Revoke token={token} /> : ''),
        },
      ]}
    />
  );
}

function state(token: ShownToken, timeZone: string): string {
  const t = words('settings');
  if (token.revokedAt !== null) return t('tokens.state.revoked', { day: day(token.revokedAt, timeZone) });
  if (token.expiresAt === null) return t('tokens.state.works');
  return t(`tokens.state.${token.works ? 'worksUntil' : 'ranOut'}`, { day: day(token.expiresAt, timeZone) });
}

function Revoke({ token: { id, name } }: { token: ShownToken }) {
  return (
    <form action="/settings/tokens/revoke" method="post">
      <input type="hidden" name="id" value={id} />
      <button type="submit" className={button.button}>
        {words('settings')('tokens.revoke', { name })}
      </button>
    </form>
  );
}
