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

interface Props {
  params: Promise<{ job: string }>;
  searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Readings of job ${labelFrom((await params).job)}` };
}

export default async function Readings({ params, searchParams }: Props) {
  const job = labelFrom((await params).job);
  const setup = firstOf(await searchParams, 'setup');
  const viewer = await enter();
  const history = await readingHistory(viewer, { job, setup });
  if (history.length === 0) notFound();
  const told = await said();
  return (
    <Page
      above={<Link href={jobAddress(job)}>Job {job}</Link>}
      title={setup === undefined ? 'Readings and their history' : `Readings of setup ${setup}`}
      lead="A reading is never overwritten: a correction or an exclusion stands beside the first value, with who made it and why. Figures and verdicts follow."
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <Panel id="history" title="As entered, and as it counts now">
        <RevisionTable history={history} timeZone={viewer.shop.timeZone} />
      </Panel>
      <Panel
        id="revise"
        title="Correct or exclude a reading"
        note="Correct what was written wrongly. Exclude what was no reading of this point, such as a pointer that slipped; never a reading because it does not suit: a doubtful one is read again, and both stay."
      >
        <ReviseForm history={history} />
      </Panel>
    </Page>
  );
}
