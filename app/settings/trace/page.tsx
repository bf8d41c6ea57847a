import type { Metadata } from 'next';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { enter } from '@/app/_shop/enter';
import { address, firstOf, type Query } from '@/app/_words/address';
import { count } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { dayAndTime } from '@/app/_words/times';
import { listTrace, type TraceRow } from '@/lib/access';
import styles from './trace.module.css';

export const metadata: Metadata = { title: 'Trace' };

const A_PAGE = 50;

const VIA: Record<TraceRow['via'], string> = {
  page: 'on a page',
  command: 'by a command',
  interface: 'by an API token',
  program: 'by the program',
};

export default async function TracePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams;
  const [job, person] = [firstOf(query, 'job'), firstOf(query, 'person')];
  const page = pageNumber(query);
  const viewer = await enter();
  const { rows, total } = await listTrace(viewer, { job, person, page, pageSize: A_PAGE });
  return (
    <Page
      above={<Link href="/settings">Settings</Link>}
      title="Trace"
      lead="Who entered, changed or excluded what, when, from what to what. Entries are only ever added; the database itself refuses anything else."
    >
      <form className={styles.form} action="/settings/trace" method="get" role="search" data-print="no">
        <Field label="Job number" id="job">
          <input id="job" name="job" defaultValue={job} maxLength={80} />
        </Field>
        <Field label="Code of a person" id="person">
          <input id="person" name="person" defaultValue={person} maxLength={80} />
        </Field>
        <button type="submit" className={button.button}>
          Show
        </button>
      </form>
      <Panel id="entries" title={count(total, 'entry', 'entries')}>
        <Table
          caption="The latest first"
          rows={rows}
          rowKey={({ id }) => String(id)}
          empty="Nothing of this kind was done."
          columns={[
            { key: 'at', head: 'When', whole: true, cell: ({ at }) => dayAndTime(at, viewer.shop.timeZone) },
            {
              key: 'by',
              head: 'Who',
              cell: ({ by, via }) => (by === null ? VIA[via] : `${by}, ${VIA[via]}`),
            },
            { key: 'action', head: 'Did', cell: ({ action }) => action },
            {
              key: 'subject',
              head: 'What',
              names: true,
              wraps: true,
              cell: ({ subject, concerns }) => (concerns === null ? subject : `${subject}, ${concerns}`),
            },
            { key: 'from', head: 'From', cell: ({ before }) => values(before) },
            { key: 'to', head: 'To', cell: ({ after }) => values(after) },
            { key: 'why', head: 'Why', cell: ({ reason }) => reason ?? '' },
          ]}
        />
        <Pager
          page={page}
          pages={Math.max(1, Math.ceil(total / A_PAGE))}
          to={(number) => address('/settings/trace', { job, person, page: number })}
        />
      </Panel>
    </Page>
  );
}

/** `value 351.5, excluded no`. */
function values(of: TraceRow['before']): string {
  if (of === null) return '';
  return Object.entries(of)
    .map(([name, value]) => `${name} ${typeof value === 'string' ? value : plain(value)}`)
    .join(', ');
}

const plain = (value: unknown): string =>
  value === true ? 'yes' : value === false ? 'no' : value === null ? 'none' : JSON.stringify(value);
