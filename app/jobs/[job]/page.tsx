import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Page } from '@/app/_look/page';
import { missCostOf } from '@/app/_shop/miss-cost';
import { address, jobAddress, sheetAddress, technicianAddress } from '@/app/_words/address';
import { OutcomeTag } from '@/app/_words/jobs';
import { count } from '@/app/_words/numbers';
import { labelFrom } from '@/app/_words/parameters';
import { day } from '@/app/_words/times';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { JobCautions } from './_parts/job-cautions';
import { JobNumbers } from './_parts/job-numbers';
import { OutOfService } from './_parts/out-of-service';
import { RoundSection } from './_parts/round-section';
import { currentLearned, getJob, getJobRow, readingsOfJob, roundVerdicts, type JobRow } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

interface Props {
  params: Promise<{ job: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Job ${labelFrom((await params).job)}` };
}

export default async function JobPage({ params }: Props) {
  const number = labelFrom((await params).job);
  const viewer = await enter();
  const { shop } = viewer;
  const [job, row, verdicts, learned, readings] = await Promise.all([
    getJob(viewer, number),
    getJobRow(viewer, number),
    roundVerdicts(viewer, { job: number }),
    currentLearned(viewer, number),
    readingsOfJob(viewer, number),
  ]);
  if (job === null || row === null) notFound();

  return (
    <Page
      above={<Link href="/jobs">All jobs</Link>}
      title={`Job ${job.job}`}
      lead={<Lead row={row} timeZone={shop.timeZone} />}
      actions={
        <>
          <a className={button.button} href={address('/jobs/download', { job: job.job })} download>
            Download this job’s readings
          </a>
          <Link className={button.button} href={`${jobAddress(job.job)}/readings`}>
            Readings and their history
          </Link>
        </>
      }
    >
      <ExcludedNote viewer={viewer} filter={{ job: job.job }} />
      <OutOfService viewer={viewer} rounds={job.rounds} />
      <JobNumbers row={row} rounds={job.rounds} />
      {job.rounds.map((round) => (
        <RoundSection
          key={`${round.stage} ${round.attempt}`}
          round={round}
          verdict={verdicts.find((one) => one.stage === round.stage && one.attempt === round.attempt) ?? null}
          learned={learned?.learned ?? null}
          readings={readings.filter(
            (reading) => reading.stage === round.stage && reading.attempt === round.attempt,
          )}
          timeZone={shop.timeZone}
          missCost={missCostOf(shop)}
        />
      ))}
      <JobCautions />
    </Page>
  );
}

function Lead({ row, timeZone }: { row: JobRow; timeZone: string }) {
  return (
    <>
      Sheet {row.sheet === null ? 'not named' : <Link href={sheetAddress(row.sheet)}>{row.sheet}</Link>};
      first read {day(row.openedAt, timeZone)}; {count(row.rounds, 'round')}; by{' '}
      {row.technicians.map((code, index) => (
        <span key={code}>
          {index > 0 && ', '}
          <Link href={technicianAddress(code)}>{code}</Link>
        </span>
      ))}
      . <OutcomeTag outcome={row.outcome} />
    </>
  );
}
