import type { Metadata } from 'next';
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

export const metadata: Metadata = { title: 'Load measurements' };

const REFUSALS = {
  'no-file': 'No file was chosen. Choose one and send it again.',
  'form-too-large':
    'Without scripts a file may have 25 MB at most. Switch scripts on, or split the file, for example by year.',
  gone: 'That file is no longer waiting: files are kept for a day. Send it again.',
} as const;

const refusal = z.enum(Object.keys(REFUSALS) as (keyof typeof REFUSALS)[]);

export default async function Load({ searchParams }: { searchParams: Promise<Query> }) {
  const refused = refusal.safeParse(firstOf(await searchParams, 'refused'));
  const viewer = await enter();
  const { shop } = viewer;
  const files = await listLoadedFiles(viewer);
  return (
    <Page
      title="Load measurements"
      lead="Choose a measurement file. You first see what it holds and every fault in it; nothing is stored until you confirm."
    >
      {refused.success && (
        <Note kind="fault" live>
          <p>{REFUSALS[refused.data]}</p>
        </Note>
      )}
      <UploadForm limit={MAX_FILE_BYTES} />
      <Panel id="format" title="What the file looks like">
        <FormatNotes />
      </Panel>
      <Panel id="loaded" title="Files loaded so far">
        <Table
          caption="Newest first"
          rows={files}
          rowKey={(file) => `${file.sha256} ${file.loadedAt}`}
          empty="None yet."
          columns={[
            { key: 'name', head: 'File', names: true, cell: (file) => file.name },
            {
              key: 'at',
              head: 'Loaded',
              whole: true,
              cell: (file) => dayAndTime(file.loadedAt, shop.timeZone),
            },
            { key: 'lines', head: 'Lines', numeric: true, cell: (file) => grouped(file.lines) },
            { key: 'added', head: 'Readings added', numeric: true, cell: (file) => grouped(file.added) },
            {
              key: 'there',
              head: 'Already there',
              numeric: true,
              cell: (file) => grouped(file.alreadyThere),
            },
          ]}
        />
        <p>
          <Link href="/jobs">See the jobs</Link>
        </p>
      </Panel>
    </Page>
  );
}
