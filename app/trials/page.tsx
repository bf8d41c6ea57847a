import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Empty } from '@/app/_look/empty';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { Table, type Column } from '@/app/_look/table';
import { enter } from '@/app/_shop/enter';
import { day } from '@/app/_words/times';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { listTrials, may, plannedReadings, type TrialRow } from '@/lib/access';
import { TrialState } from './_parts/trial-state';
import { purposeWords, trialAddress } from './_parts/words';

export const generateMetadata = titled(() => words('trials')('title'));

export default async function Trials() {
  const viewer = await enter();
  const t = words('trials');
  const trials = await listTrials(viewer);
  const plans = may(viewer, 'run trials');
  const planOne = (
    <Link className={button.strong} href="/trials/new">
      {t('planOne')}
    </Link>
  );
  if (trials.length === 0)
    return (
      <Page title={t('title')}>
        <Empty title={t('list.none')} action={plans ? planOne : undefined}>
          <p>{t('list.what')}</p>
          {!plans && <p>{t('list.noneOwn')}</p>}
        </Empty>
      </Page>
    );
  return (
    <Page
      title={t('title')}
      lead={plans ? t('list.lead') : t('list.leadOwn')}
      actions={plans ? planOne : undefined}
    >
      <Panel id="list" title={plans ? t('all') : t('list.own')}>
        <Table
          caption={t('list.caption')}
          rows={trials}
          rowKey={({ id }) => String(id)}
          columns={
            plans
              ? [name(), question(), state(), progress(), planned(viewer.shop.timeZone)]
              : [name(), state(), own()]
          }
        />
      </Panel>
    </Page>
  );
}

const name = (): Column<TrialRow> => ({
  key: 'name',
  head: words('trials')('list.trial'),
  names: true,
  wraps: true,
  cell: (trial) => (
    <Link href={trialAddress(trial.id)} prefetch={false}>
      {trial.name}
    </Link>
  ),
});
const question = (): Column<TrialRow> => ({
  key: 'question',
  head: words('trials')('list.question'),
  cell: ({ plan }) => purposeWords(plan.asked),
});
const state = (): Column<TrialRow> => ({
  key: 'state',
  head: words('trials')('list.state'),
  cell: (trial) => <TrialState trial={trial} />,
});
const progress = (): Column<TrialRow> => ({
  key: 'progress',
  head: words('trials')('list.in'),
  numeric: true,
  cell: ({ entered, plan }) => words('trials')('of', { n: entered, all: plannedReadings(plan) }),
});
const own = (): Column<TrialRow> => ({
  key: 'enter',
  head: words('trials')('list.part'),
  cell: ({ id, closedAt, entered, plan }) =>
    closedAt === null && entered < plannedReadings(plan) ? (
      <Link href={`${trialAddress(id)}/run`}>{words('trials')('trial.enter')}</Link>
    ) : (
      words('trials')('list.done')
    ),
});
const planned = (timeZone: string): Column<TrialRow> => ({
  key: 'planned',
  head: words('trials')('list.planned'),
  whole: true,
  cell: ({ createdAt }) => day(createdAt, timeZone),
});
