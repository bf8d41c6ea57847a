import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { missCostOf } from '@/app/_shop/miss-cost';
import { firstOf, jobAddress, roundAnchor, type Query } from '@/app/_words/address';
import { roundName } from '@/app/_words/jobs';
import { labelFrom } from '@/app/_words/parameters';
import { JobCautions } from '../_parts/job-cautions';
import { AllHeights } from './_parts/all-heights';
import { Checks } from './_parts/checks';
import { evidenceKept } from './_parts/evidence-kept';
import { Explanations } from './_parts/explanations';
import { Outcomes } from './_parts/outcomes';
import { roundNamed } from './_parts/round-named';
import { Weighing } from './_parts/weighing';
import { currentLearned, getJob, listRecheckOutcomes, roundVerdicts } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { hear } from '@/app/_words/speech';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';

interface Props {
  params: Promise<{ job: string }>;
  searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await hear();
  return { title: words('evidence')('title', { job: labelFrom((await params).job) }) };
}

export default async function EvidencePage({ params, searchParams }: Props) {
  const number = labelFrom((await params).job);
  const query = await searchParams;
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('evidence');
  const [job, verdicts, learned, outcomes] = await Promise.all([
    getJob(viewer, number),
    roundVerdicts(viewer, { job: number }),
    currentLearned(viewer, number),
    listRecheckOutcomes(viewer, number),
  ]);
  const round = job && roundNamed(job.rounds, firstOf(query, 'round'));
  if (round === null) notFound();
  const { stage, attempt } = round;
  const name = roundName(stage, attempt);
  if (learned === null) return <FiguresPending title={t('pending', { round: name })} />;

  const verdict = verdicts.find((one) => one.stage === stage && one.attempt === attempt) ?? null;
  const { heights, pins } = evidenceKept(round, learned.learned);
  const missCost = missCostOf(shop);
  return (
    <Page
      above={
        <Link href={`${jobAddress(number)}#${roundAnchor(stage, attempt)}`}>{t('job', { job: number })}</Link>
      }
      title={t('heading', { round: name })}
      lead={t('lead')}
    >
      <ExcludedNote viewer={viewer} filter={{ job: number }} />
      {verdict?.decidable === false && (
        <Note kind="caution">
          <p>
            <b>{t('center.first')}</b> {told(verdict.why ?? '')} {t('center.stands')}
          </p>
        </Note>
      )}
      {'why' in heights ? (
        <Note>
          <p>{told(heights.why)}</p>
        </Note>
      ) : (
        <>
          <Explanations
            id="explanations"
            title={t('explanations.heights')}
            evidence={heights}
            kind="height"
          />
          <Weighing id="weighing" title={t('weighing.heights')} evidence={heights} kind="height" />
          {verdict !== null && <Checks verdict={verdict} />}
          <AllHeights
            id="heights"
            title={t('all.heights')}
            evidence={heights}
            {...{ verdict, missCost }}
            kind="height"
          />
        </>
      )}
      {pins !== null && (
        <>
          <Explanations
            id="pin-explanations"
            title={t('explanations.pins')}
            evidence={pins}
            kind="centerline"
          />
          <Weighing id="pin-weighing" title={t('weighing.pins')} evidence={pins} kind="centerline" />
          <AllHeights
            id="pins"
            title={t('all.pins')}
            evidence={pins}
            {...{ verdict, missCost }}
            kind="centerline"
          />
        </>
      )}
      <Outcomes
        round={round}
        outcomes={outcomes}
        by={viewer.code}
        answer={firstOf(query, 'outcome')}
        timeZone={shop.timeZone}
      />
      <JobCautions />
    </Page>
  );
}
