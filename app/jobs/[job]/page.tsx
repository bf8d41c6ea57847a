import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Page } from '@/app/_look/page';
import { drawnOnce } from '@/app/_look/still';
import { missCostOf } from '@/app/_shop/miss-cost';
import { address, jobAddress, sheetAddress, type Query } from '@/app/_words/address';
import { OutcomeTag } from '@/app/_words/jobs';
import { labelFrom } from '@/app/_words/parameters';
import { words } from '@/app/_words/words';
import { hear } from '@/app/_words/speech';
import { day } from '@/app/_words/times';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { picturedOf, verdictAmong } from './_picture/of-job';
import { Patterns } from './_picture/patterns';
import { Picture } from './_picture/picture';
import { shownOf } from './_picture/shown';
import { BesideCarPanel } from './_parts/beside-car';
import { JobCautions } from './_parts/job-cautions';
import { JobNumbers } from './_parts/job-numbers';
import { OutOfService } from './_parts/out-of-service';
import { RoundSection } from './_parts/round-section';
import { currentLearned, getJob, getJobRow, readingsOfJob, roundVerdicts, type JobRow } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import type { Reading, Round } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { HandLink, handsOf, type Hands } from '@/app/_shop/hand-link';

interface Props {
  params: Promise<{ job: string }>;
  searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await hear();
  return { title: words('jobs')('title', { job: labelFrom((await params).job) }) };
}

export default async function JobPage({ params, searchParams }: Props) {
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
  const t = words('jobs');
  const verdictOf = verdictAmong(verdicts);
  const shown = shownOf(job.rounds, await searchParams);

  return (
    <Page
      above={<Link href="/jobs">{t('all')}</Link>}
      title={t('title', { job: job.job })}
      lead={<Lead row={row} timeZone={shop.timeZone} hands={handsOf(viewer)} />}
      actions={
        <>
          <a className={button.button} href={`${jobAddress(job.job)}/record`} download>
            {words('record')('link')}
          </a>
          <a className={button.button} href={address('/jobs/download', { job: job.job })} download>
            {t('download')}
          </a>
          <Link className={button.button} href={`${jobAddress(job.job)}/readings`}>
            {t('history')}
          </Link>
        </>
      }
    >
      <ExcludedNote viewer={viewer} filter={{ job: job.job }} />
      <OutOfService viewer={viewer} rounds={job.rounds} />
      <BesideCarPanel viewer={viewer} job={job.job} />
      {shown !== null && (
        <>
          <Picture {...await picturedOf(viewer, job, verdicts)} shown={shown} />
          <Patterns rounds={shown.rounds} verdicts={verdicts} />
        </>
      )}
      <JobNumbers row={row} rounds={job.rounds} />
      {job.rounds.map((round) => (
        <RoundSection
          key={`${round.stage} ${round.attempt}`}
          round={round}
          verdict={verdictOf(round)}
          learned={learned?.learned ?? null}
          readings={readingsIn(readings, round)}
          timeZone={shop.timeZone}
          missCost={missCostOf(shop)}
          hands={handsOf(viewer)}
        />
      ))}
      <JobCautions />
    </Page>
  );
}

const readingsIn = onceFor((readings: readonly Reading[], { stage, attempt }: Round): readonly Reading[] =>
  frozen(readings.filter((reading) => reading.stage === stage && reading.attempt === attempt)),
);

interface LeadProps {
  row: JobRow;
  timeZone: string;
  hands: Hands;
}

const Lead = drawnOnce(function Lead({ row, timeZone, hands }: LeadProps) {
  const t = words('jobs');
  const { sheet } = row;
  return (
    <>
      {sheet === null
        ? t('lead.noSheet')
        : t.rich('lead.sheet', { sheet, a: (chunks) => <Link href={sheetAddress(sheet)}>{chunks}</Link> })}
      ; {t('lead.rest', { day: day(row.openedAt, timeZone), n: row.rounds })}{' '}
      {row.technicians.map((code, index) => (
        <span key={code}>
          {index > 0 && ', '}
          <HandLink code={code} hands={hands} />
        </span>
      ))}
      . <OutcomeTag outcome={row.outcome} />
    </>
  );
});
