import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { enter } from '@/app/_shop/enter';
import { address, firstOf, type Query } from '@/app/_words/address';
import { pageNumber } from '@/app/_words/page-number';
import { dayAndTime } from '@/app/_words/times';
import { listTrace } from '@/lib/access';
import { actionWords, subjectWords, valueWords } from './_parts/entry-words';
import styles from './trace.module.css';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('settings')('trace.title'));

const A_PAGE = 50;

export default async function TracePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams;
  const [job, person] = [firstOf(query, 'job'), firstOf(query, 'person')];
  const page = pageNumber(query);
  const viewer = await enter();
  const t = words('settings');
  const { rows, total } = await listTrace(viewer, { job, person, page, pageSize: A_PAGE });
  return (
    <Page above={<Link href="/settings">{t('title')}</Link>} title={t('trace.title')} lead={t('trace.lead')}>
      <form className={styles.form} action="/settings/trace" method="get" role="search" data-print="no">
        <Field label={t('trace.job')} id="job">
          <input id="job" name="job" defaultValue={job} maxLength={80} />
        </Field>
        <Field label={t('trace.person')} id="person">
          <input id="person" name="person" defaultValue={person} maxLength={80} />
        </Field>
        <button type="submit" className={button.button}>
          {t('trace.show')}
        </button>
      </form>
      <Panel id="entries" title={t('trace.entries', { n: total })}>
        <Table
          caption={t('trace.caption')}
          rows={rows}
          rowKey={({ id }) => String(id)}
          empty={t('trace.none')}
          columns={[
            {
              key: 'at',
              head: t('trace.when'),
              whole: true,
              cell: ({ at }) => dayAndTime(at, viewer.shop.timeZone),
            },
            {
              key: 'by',
              head: t('trace.who'),
              cell: ({ by, via }) =>
                by === null ? t(`trace.via.${via}`) : `${by}, ${t(`trace.via.${via}`)}`,
            },
            { key: 'action', head: t('trace.did'), cell: ({ action }) => actionWords(action) },
            {
              key: 'subject',
              head: t('trace.what'),
              names: true,
              wraps: true,
              cell: ({ subject, concerns }) =>
                [subjectWords(subject), concerns].filter((part) => part !== null).join(', '),
            },
            {
              key: 'from',
              head: t('trace.from'),
              cell: ({ before }) => valueWords(before, viewer.shop.timeZone),
            },
            { key: 'to', head: t('trace.to'), cell: ({ after }) => valueWords(after, viewer.shop.timeZone) },
            { key: 'why', head: t('trace.why'), cell: ({ reason }) => reason ?? '' },
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
