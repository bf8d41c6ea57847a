import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import prose from '@/app/_look/prose.module.css';
import { Table } from '@/app/_look/table';
import { missCostOf, sureFrom } from '@/app/_shop/miss-cost';
import { firstOf, type Query } from '@/app/_words/address';
import { percent } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { DEFAULT_MISS_COST } from '@/lib/assess';
import { ReportSchedule } from './_parts/report-schedule';
import { MissCostForm } from './_parts/miss-cost-form';
import { ShopForm } from './_parts/shop-form';
import { Thresholds } from './_parts/thresholds';
import { MISS_COST_RANGE, missCosts, reportPlan } from '@/lib/access';
import { said } from '@/app/_shop/said';
import { enter } from '@/app/_shop/enter';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('settings')('title'));

export default async function Settings({ searchParams }: { searchParams: Promise<Query> }) {
  const answer = firstOf(await searchParams, 'answer');
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('settings');
  const history = await missCosts(viewer);
  const missCost = missCostOf(shop);
  const told = await said();
  return (
    <Page title={t('title')} lead={t('lead')}>
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <Panel id="shop" title={t('shop.title')} note={t('shop.zone')}>
        <ShopForm name={shop.name} timeZone={shop.timeZone} />
      </Panel>
      <Panel id="people" title={t('people.title')}>
        <p>{t.rich('toPeople', { link: (chunks) => <Link href="/settings/people">{chunks}</Link> })}</p>
      </Panel>
      <Panel id="sheets" title={words('sheets')('title')}>
        <p>
          {words('sheets').rich('fromSettings', { link: (chunks) => <Link href="/sheets">{chunks}</Link> })}
        </p>
      </Panel>
      <Panel id="trace" title={t('trace.title')}>
        <p>{t.rich('toTrace', { link: (chunks) => <Link href="/settings/trace">{chunks}</Link> })}</p>
      </Panel>
      <Panel id="report" title={t('report.title')} note={t('report.note')}>
        <ReportSchedule plan={await reportPlan(viewer)} timeZone={shop.timeZone} />
        <p>{t.rich('toTokens', { link: (chunks) => <Link href="/settings/tokens">{chunks}</Link> })}</p>
      </Panel>
      <Panel id="miss-cost" title={t('missCost.title')}>
        <div className={prose.prose}>
          <p>{t('missCost.why')}</p>
          <p>
            {t.rich('missCost.now', {
              b: (chunks) => <b>{chunks}</b>,
              cost: missCost,
              sure: percent(sureFrom(missCost)),
              rest: percent(1 - sureFrom(missCost)),
            })}
          </p>
          <p>{t('missCost.usual', { usual: DEFAULT_MISS_COST })}</p>
        </div>
        {answer === 'kept' && (
          <Note live>
            <p>{t('missCost.kept')}</p>
          </Note>
        )}
        {answer === 'refused' && (
          <Note kind="fault" live>
            <p>{t('missCost.refused', MISS_COST_RANGE)}</p>
          </Note>
        )}
        <MissCostForm cost={missCost} />
        <Thresholds missCost={missCost} usual={DEFAULT_MISS_COST} />
        <Table
          caption={t('missCost.before')}
          rows={history}
          rowKey={({ at }) => String(at)}
          empty={t('missCost.never', { usual: DEFAULT_MISS_COST })}
          columns={[
            {
              key: 'cost',
              head: t('missCost.cost'),
              names: true,
              cell: ({ cost }) => t('missCost.number', { cost }),
            },
            { key: 'by', head: t('missCost.setBy'), cell: ({ by }) => by ?? t('missCost.notNamed') },
            {
              key: 'at',
              head: t('missCost.when'),
              whole: true,
              cell: ({ at }) => dayAndTime(at, shop.timeZone),
            },
          ]}
        />
        <p>
          <Link href="/calibration#calls">{t('missCost.proved')}</Link>
        </p>
      </Panel>
    </Page>
  );
}
