import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { address, firstOf, type Query } from '@/app/_words/address';
import { count } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import { getTrial, listTrials, may, ownPartOf } from '@/lib/access';
import { trialNumber, trialOfPage } from '../_parts/trial-number';
import { TrialState } from '../_parts/trial-state';
import { purposeWords, trialAddress } from '../_parts/words';
import { Analysis } from './_parts/analysis';
import { Comparison } from './_parts/comparison';
import { OwnFigures } from './_parts/own-figures';
import { Progress } from './_parts/progress';

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Query>;
}

export const metadata: Metadata = { title: 'Trial' };

export default async function TrialPage({ params, searchParams }: Props) {
  const id = trialOfPage((await params).id);
  const viewer = await enter();
  const [trial, told] = await Promise.all([getTrial(viewer, id), said()]);
  if (trial === null) notFound();
  const keeps = may(viewer, 'run trials');
  const { plan, closedAt, runs, filled } = trial;
  const place = trialAddress(id);
  const earlier = keeps
    ? (await listTrials(viewer)).filter(
        (one) => one.id < id && one.plan.people.some((code) => plan.people.includes(code)),
      )
    : [];
  const own = keeps ? null : await ownPartOf(viewer, id);
  const before = trialNumber(firstOf(await searchParams, 'with') ?? '');

  return (
    <Page
      above={<Link href="/trials">All trials</Link>}
      title={trial.name}
      lead={
        <>
          {purposeWords(plan.asked)} <TrialState trial={trial} />
        </>
      }
      actions={
        <>
          {closedAt === null && (
            <Link className={button.strong} href={`${place}/run`}>
              Enter readings
            </Link>
          )}
          <Link className={button.button} href={`${place}/sheet`}>
            Run sheet
          </Link>
        </>
      }
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <FiguresRow
        figures={[
          {
            name: keeps ? 'Readings in' : 'Your readings in',
            value: filled.length,
            detail: `of ${count(runs.length * plan.readings, 'reading')} planned`,
          },
          {
            name: 'Points',
            value: plan.points.length,
            detail: plan.points.map(({ name }) => name).join(', '),
          },
          {
            name: 'Hangings at each point',
            value: plan.setups,
            detail: `each with ${count(plan.readings, 'reading')}`,
          },
          {
            name: 'Planned',
            value: day(trial.createdAt, viewer.shop.timeZone),
            detail: closedAt === null ? 'open' : `closed ${day(closedAt, viewer.shop.timeZone)}`,
          },
        ]}
      />
      {keeps ? (
        <>
          <Analysis viewer={viewer} trial={trial} />
          <Comparison viewer={viewer} trial={trial} earlier={earlier} before={before} />
          <Panel id="progress" title="How far it is">
            <Progress trial={trial} />
          </Panel>
          <Panel id="keep" title="Keep and close">
            <ul>
              <li>
                <a href={`${place}/readings`}>The readings as CSV</a>
              </li>
              <li>
                <Link href={address('/trials/new', { like: id })}>Plan the same again</Link>, after a training
                for example: other order, same points and people.
              </li>
            </ul>
            {closedAt === null && (
              <form action={`${place}/close`} method="post">
                <button type="submit" className={button.button}>
                  Close the trial: nothing is entered any more
                </button>
              </form>
            )}
          </Panel>
        </>
      ) : (
        <>
          {own !== null && <OwnFigures own={own} trial={trial} place={place} />}
          <Panel id="progress" title="Your part">
            <p>
              {closedAt === null
                ? `You hang and read ${count(runs.length, 'time')} in a fixed order. Neither the sheet’s values nor what was read before is shown: what you read stays unbiased. Your own figures stand here once the trial is closed.`
                : own === null
                  ? 'The trial was closed before a hanging of yours was complete, so there is nothing of yours to tell.'
                  : 'The trial is closed. Only you and those who run trials see these figures.'}
            </p>
            <Progress trial={trial} />
          </Panel>
        </>
      )}
    </Page>
  );
}
