import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Empty } from '@/app/_look/empty';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { Table, type Column } from '@/app/_look/table';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { address, sheetAddress } from '@/app/_words/address';
import { grouped } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { listSheets, may, type SheetRow } from '@/lib/access';
import { LoadForm } from './_parts/load-form';

export const generateMetadata = titled(() => words('sheets')('title'));

export default async function Sheets() {
  const viewer = await enter();
  const t = words('sheets');
  const [sheets, told] = [await listSheets(viewer), await said()];
  const keeps = may(viewer, 'keep sheets');
  const retired = sheets.filter(({ retiredAt }) => retiredAt !== null);
  const columns: Column<SheetRow>[] = [
    {
      key: 'name',
      head: t('list.name'),
      names: true,
      wraps: true,
      cell: ({ name }) => <Link href={sheetAddress(name)}>{name}</Link>,
    },
    { key: 'points', head: t('list.points'), numeric: true, cell: ({ points }) => grouped(points) },
    {
      key: 'dimensions',
      head: t('list.dimensions'),
      numeric: true,
      cell: ({ dimensions }) => grouped(dimensions),
    },
    {
      key: 'jobs',
      head: t('list.jobs'),
      numeric: true,
      cell: ({ name, jobs }) =>
        jobs === 0 ? grouped(0) : <Link href={address('/jobs', { sheet: name })}>{grouped(jobs)}</Link>,
    },
    { key: 'revision', head: t('list.revision'), numeric: true, cell: ({ revision }) => revision },
  ];
  return (
    <Page
      title={t('title')}
      lead={t('lead')}
      actions={
        keeps ? (
          <Link className={button.strong} href="/sheets/new/enter">
            {t('list.enter')}
          </Link>
        ) : undefined
      }
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      {sheets.length === 0 ? (
        <Empty title={t('list.empty')}>
          <p>{t('list.emptyHint')}</p>
        </Empty>
      ) : (
        <Panel id="in-use" title={t('list.inUse')}>
          <Table
            caption={t('list.caption')}
            captionOutOfSight
            rows={sheets.filter(({ retiredAt }) => retiredAt === null)}
            rowKey={({ name }) => name}
            empty={t('list.noneInUse')}
            columns={columns}
          />
        </Panel>
      )}
      {retired.length > 0 && (
        <Panel id="retired" title={t('list.retired')} note={t('list.retiredNote')}>
          <Table
            caption={t('list.retired')}
            captionOutOfSight
            rows={retired}
            rowKey={({ name }) => name}
            columns={[
              ...columns,
              {
                key: 'since',
                head: t('list.since'),
                whole: true,
                cell: ({ retiredAt }) => (retiredAt === null ? '' : day(retiredAt, viewer.shop.timeZone)),
              },
            ]}
          />
        </Panel>
      )}
      {keeps && (
        <Panel id="load" title={t('load.title')} note={t('load.note')}>
          <LoadForm />
        </Panel>
      )}
    </Page>
  );
}
