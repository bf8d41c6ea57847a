import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { attentionNow, LOOKED_BACK } from '@/app/_overview/attention';
import { missCostOf } from '@/app/_shop/miss-cost';
import { AttentionList } from '@/app/_overview/attention-list';
import { departuresFrom } from '@/app/_overview/departures';
import { Groups, Months } from '@/app/_overview/rates';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresRow } from '@/app/_look/figures-row';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { rateOf } from '@/app/_shop/rate-of';
import { address, technicianAddress } from '@/app/_words/address';
import { grouped, percent } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import {
  countJobs,
  countOutcomes,
  everybodysFigures,
  listLoadedFiles,
  newestHanging,
  may,
  signalsAnswer,
} from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { hear } from '@/app/_words/speech';
import { words } from '@/app/_words/words';

export async function generateMetadata(): Promise<Metadata> {
  await hear();
  return { title: { absolute: words('overview')('title') } };
}

export default async function Overview() {
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('overview');
  if (!may(viewer, 'see everybody’s figures')) redirect(technicianAddress(viewer.code));
  const jobs = await countJobs(viewer);
  if (jobs === 0) return <NothingYet title={shop.name} />;

  const now = (await newestHanging(viewer)) ?? 0;
  const [all, months, technicians, sheets, sections, attention, figures, files, signals] = await Promise.all([
    countOutcomes(viewer, 'shop'),
    countOutcomes(viewer, 'month'),
    countOutcomes(viewer, 'technician'),
    countOutcomes(viewer, 'sheet'),
    countOutcomes(viewer, 'section'),
    attentionNow(viewer, now, missCostOf(shop)),
    everybodysFigures(viewer),
    listLoadedFiles(viewer),
    signalsAnswer(viewer),
  ]);
  const whole = all[0] ?? { jobs: 0, right: 0 };
  const rate = rateOf(whole.right, whole.jobs);
  const readings = files.reduce((sum, file) => sum + file.added, 0);

  return (
    <Page title={shop.name} lead={t('lead', { day: day(now, shop.timeZone) })}>
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <FiguresRow
        figures={[
          {
            name: t('right'),
            value: rate.rate === null ? t('noneYet') : percent(rate.rate),
            detail:
              rate.low === null || rate.high === null
                ? rate.why
                : t('rate', {
                    low: percent(rate.low),
                    high: percent(rate.high),
                    right: rate.right,
                    n: rate.jobs,
                  }),
          },
          {
            name: t('jobs'),
            value: grouped(jobs),
            detail: <Link href={address('/jobs', { outcome: 'wrong' })}>{t('notRight')}</Link>,
          },
          {
            name: t('readings'),
            value: grouped(readings),
            detail: t('files', { n: files.length }),
          },
          {
            name: t('toSettle'),
            value: grouped(attention.open.length + attention.undecidable.length),
            detail: t('ofNewest', { n: LOOKED_BACK }),
          },
        ]}
      />

      <Panel id="attention" title={t('attention.title')}>
        {figures === null ? (
          <p>{t('attention.notYet')}</p>
        ) : (
          <AttentionList
            missCost={missCostOf(shop)}
            attention={attention}
            departures={departuresFrom(figures.figures)}
            signals={signals}
            now={now}
            timeZone={shop.timeZone}
          />
        )}
      </Panel>

      <Months counts={months} overall={rate.rate} />
      <Groups rate={rate} technicians={technicians} sections={sections} sheets={sheets} />
    </Page>
  );
}
