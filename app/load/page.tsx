import Link from 'next/link';
import { z } from 'zod';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { firstOf, type Query } from '@/app/_words/address';
import { grouped } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { MAX_FILE_BYTES } from '@/lib/measure';
import { FormatNotes } from './_parts/format-notes';
import { UploadForm } from './_parts/upload-form';
import { listLoadedFiles } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { WordsOnDevice } from '@/app/_words/on-device';

export const generateMetadata = titled(() => words('load')('title'));

const refusal = z.enum(['no-file', 'form-too-large', 'gone']);

export default async function Load({ searchParams }: { searchParams: Promise<Query> }) {
  const refused = refusal.safeParse(firstOf(await searchParams, 'refused'));
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('load');
  const files = await listLoadedFiles(viewer);
  return (
    <Page title={t('title')} lead={t('lead')}>
      {refused.success && (
        <Note kind="fault" live>
          <p>{t(`refused.${refused.data}`)}</p>
        </Note>
      )}
      <WordsOnDevice parts={['upload']}>
        <UploadForm limit={MAX_FILE_BYTES} />
      </WordsOnDevice>
      <Panel id="format" title={t('format.title')}>
        <FormatNotes />
      </Panel>
      <Panel id="loaded" title={t('files.title')}>
        <Table
          caption={t('files.caption')}
          rows={files}
          rowKey={(file) => `${file.sha256} ${file.loadedAt}`}
          empty={t('files.none')}
          columns={[
            { key: 'name', head: t('files.file'), names: true, cell: (file) => file.name },
            {
              key: 'at',
              head: t('files.loaded'),
              whole: true,
              cell: (file) => dayAndTime(file.loadedAt, shop.timeZone),
            },
            { key: 'lines', head: t('files.lines'), numeric: true, cell: (file) => grouped(file.lines) },
            { key: 'added', head: t('files.added'), numeric: true, cell: (file) => grouped(file.added) },
            {
              key: 'there',
              head: t('files.there'),
              numeric: true,
              cell: (file) => grouped(file.alreadyThere),
            },
          ]}
        />
        <p>
          <Link href="/jobs">{t('seeJobs')}</Link>
        </p>
        <p>{words('sheets').rich('fromLoad', { link: (chunks) => <Link href="/sheets">{chunks}</Link> })}</p>
      </Panel>
    </Page>
  );
}
