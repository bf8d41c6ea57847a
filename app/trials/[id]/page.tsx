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
import { day } from '@/app/_words/times';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
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

export const generateMetadata = titled(() => words('trials')('trial.title'));

export default async function TrialPage({ params, searchParams }: Props) {
  const id = trialOfPage((await params).id);
  const viewer = await enter();
  const [trial, told] = await Promise.all([getTrial(viewer, id), said()]);
  if (trial === null) notFound();
  const t = words('trials');
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
      above={<Link href="/trials">{t('all')}</Link>}
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
              {t('trial.enter')}
            </Link>
          )}
          <Link className={button.button} href={`${place}/sheet`}>
            {t('trial.sheet')}
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
            name: keeps ? t('trial.in') : t('trial.ownIn'),
            value: filled.length,
            detail: t('trial.ofPlanned', { n: runs.length * plan.readings }),
          },
          {
            name: t('trial.points'),
            value: plan.points.length,
            detail: plan.points.map(({ name }) => name).join(', '),
          },
          {
            name: t('trial.hangings'),
            value: plan.setups,
            detail: t('trial.eachWith', { n: plan.readings }),
          },
          {
            name: t('trial.planned'),
            value: day(trial.createdAt, viewer.shop.timeZone),
            detail:
              closedAt === null
                ? t('trial.open')
                : t('trial.closed', { day: day(closedAt, viewer.shop.timeZone) }),
          },
        ]}
      />
      {keeps ? (
        <>
          <Analysis viewer={viewer} trial={trial} />
          <Comparison viewer={viewer} trial={trial} earlier={earlier} before={before} />
          <Panel id="progress" title={t('trial.progress')}>
            <Progress trial={trial} />
          </Panel>
          <Panel id="keep" title={t('trial.keep')}>
            <ul>
              <li>
                <a href={`${place}/readings`}>{t('trial.csv')}</a>
              </li>
              <li>
                {t.rich('trial.again', {
                  again: (chunks) => <Link href={address('/trials/new', { like: id })}>{chunks}</Link>,
                })}
              </li>
            </ul>
            {closedAt === null && (
              <form action={`${place}/close`} method="post">
                <button type="submit" className={button.button}>
                  {t('trial.close')}
                </button>
              </form>
            )}
          </Panel>
        </>
      ) : (
        <>
          {own !== null && <OwnFigures own={own} trial={trial} place={place} />}
          <Panel id="progress" title={t('trial.part')}>
            <p>
              {closedAt === null
                ? t('trial.partOpen', { n: runs.length })
                : own === null
                  ? t('trial.partNone')
                  : t('trial.partClosed')}
            </p>
            <Progress trial={trial} />
          </Panel>
        </>
      )}
    </Page>
  );
}
