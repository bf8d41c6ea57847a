import button from '@/app/_look/button.module.css';
import form from '@/app/_look/form.module.css';
import { Table } from '@/app/_look/table';
import { dayAndTime } from '@/app/_words/times';
import type { SignedInSession } from '@/lib/access';

interface SessionTableProps {
  sessions: SignedInSession[];
  /** The session of this page. */
  here: string;
  timeZone: string;
}

/** Every session that is still good, each with the means to end it. */
export function SessionTable({ sessions, here, timeZone }: SessionTableProps) {
  return (
    <>
      <Table
        caption="Newest first"
        rows={sessions}
        rowKey={({ id }) => id}
        columns={[
          { key: 'at', head: 'Since', names: true, cell: ({ startedAt }) => dayAndTime(startedAt, timeZone) },
          { key: 'to', head: 'Until', whole: true, cell: ({ expiresAt }) => dayAndTime(expiresAt, timeZone) },
          { key: 'browser', head: 'Browser', cell: ({ browser }) => browser ?? 'not said' },
          {
            key: 'end',
            head: 'End it',
            cell: ({ id }) =>
              id === here ? (
                'this one'
              ) : (
                <form className={form.inline} action="/account/sessions" method="post">
                  <input type="hidden" name="only" value={id} />
                  <button type="submit" className={button.button}>
                    End it
                  </button>
                </form>
              ),
          },
        ]}
      />
      {sessions.length > 1 && (
        <form action="/account/sessions" method="post">
          <button type="submit" className={button.button}>
            End all but this one
          </button>
        </form>
      )}
    </>
  );
}
