import button from '@/app/_look/button.module.css';
import form from '@/app/_look/form.module.css';
import { Table } from '@/app/_look/table';
import { dayAndTime } from '@/app/_words/times';
import type { SignedInSession } from '@/lib/access';
import { words } from '@/app/_words/words';

interface SessionTableProps {
  sessions: SignedInSession[];
  /** The session of this page. */
  here: string;
  timeZone: string;
}

/** Every session that is still good, each with the means to end it. */
export function SessionTable({ sessions, here, timeZone }: SessionTableProps) {
  const t = words('account');
  return (
    <>
      <Table
        caption={t('sessions.caption')}
        rows={sessions}
        rowKey={({ id }) => id}
        columns={[
          {
            key: 'at',
            head: t('sessions.since'),
            names: true,
            cell: ({ startedAt }) => dayAndTime(startedAt, timeZone),
          },
          {
            key: 'to',
            head: t('sessions.until'),
            whole: true,
            cell: ({ expiresAt }) => dayAndTime(expiresAt, timeZone),
          },
          {
            key: 'browser',
            head: t('sessions.browser'),
            cell: ({ browser }) => browser ?? t('sessions.notSaid'),
          },
          {
            key: 'end',
            head: t('sessions.end'),
            cell: ({ id }) =>
              id === here ? (
                t('sessions.thisOne')
              ) : (
                <form className={form.inline} action="/account/sessions" method="post">
                  <input type="hidden" name="only" value={id} />
                  <button type="submit" className={button.button}>
                    {t('sessions.end')}
                  </button>
                </form>
              ),
          },
        ]}
      />
      {sessions.length > 1 && (
        <form action="/account/sessions" method="post">
          <button type="submit" className={button.button}>
            {t('sessions.endOthers')}
          </button>
        </form>
      )}
    </>
  );
}
