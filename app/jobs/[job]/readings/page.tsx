import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { firstOf, jobAddress, type Query } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { readingHistory } from '@/lib/access';
import { RevisionTable } from './_parts/revision-table';
import { ReviseForm } from './_parts/revise-form';
import { hear } from '@/app/_words/speech';
import { words } from '@/app/_words/words';

interface Props {
  params: Promise<{ job: string }>;
  searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await hear();
  return { title: words('readings')('title', { job: labelFrom((await params).job) }) };
}

export default async function Readings({ params, searchParams }: Props) {
  const job = labelFrom((await params).job);
  const setup = firstOf(await searchParams, 'setup');
  const viewer = await enter();
  const t = words('readings');
  const history = await readingHistory(viewer, { job, setup });
  if (history.length === 0) notFound();
  const told = await said();
  return (
    <Page
      above={<Link href={jobAddress(job)}>{t('job', { job })}</Link>}
      title={setup === undefined ? t('all') : t('ofSetup', { setup })}
      lead={t('lead')}
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <Panel id="history" title={t('history')}>
        <RevisionTable history={history} timeZone={viewer.shop.timeZone} />
      </Panel>
      <Panel id="revise" title={t('revise.title')} note={t('revise.note')}>
        <ReviseForm history={history} />
      </Panel>
    </Page>
  );
}
