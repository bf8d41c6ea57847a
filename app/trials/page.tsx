import type { Metadata } from 'next';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Empty } from '@/app/_look/empty';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { Table, type Column } from '@/app/_look/table';
import { enter } from '@/app/_shop/enter';
import { day } from '@/app/_words/times';
import { listTrials, may, plannedReadings, type TrialRow } from '@/lib/access';
import { TrialState } from './_parts/trial-state';
import { purposeWords, trialAddress } from './_parts/words';

export const metadata: Metadata = { title: 'Trials' };

export default async function Trials() {
  const viewer = await enter();
  const trials = await listTrials(viewer);
  const plans = may(viewer, 'run trials');
  const planOne = (
    <Link className={button.strong} href="/trials/new">
      Plan a trial
    </Link>
  );
  if (trials.length === 0)
    return (
      <Page title="Trials">
        <Empty title="No trial was planned yet" action={plans ? planOne : undefined}>
          <p>
            In a trial a few technicians hang and read the same points of one vehicle, again and again, in an
            order that favours nobody. It tells reading, setting and the difference of two hands apart, and
            whether a training changed anything.
          </p>
          {!plans && <p>A trial in which you take part will stand here: you enter your readings there.</p>}
        </Empty>
      </Page>
    );
  return (
    <Page
      title="Trials"
      lead={
        plans
          ? 'The same points, hung and read again by several hands in a balanced order. What comes of it tells reading, setting and hand apart.'
          : 'Trials in which you take part. Enter what you read, and nothing else: neither the sheet nor earlier readings are shown.'
      }
      actions={plans ? planOne : undefined}
    >
      <Panel id="list" title={plans ? 'All trials' : 'Your trials'}>
        <Table
          caption="The latest first"
          rows={trials}
          rowKey={({ id }) => String(id)}
          columns={
            plans ? [name, question, state, progress, planned(viewer.shop.timeZone)] : [name, state, own]
          }
        />
      </Panel>
    </Page>
  );
}

const name: Column<TrialRow> = {
  key: 'name',
  head: 'Trial',
  names: true,
  wraps: true,
  cell: (trial) => (
    <Link href={trialAddress(trial.id)} prefetch={false}>
      {trial.name}
    </Link>
  ),
};
const question: Column<TrialRow> = {
  key: 'question',
  head: 'Question',
  cell: ({ plan }) => purposeWords(plan.asked),
};
const state: Column<TrialRow> = {
  key: 'state',
  head: 'State',
  cell: (trial) => <TrialState trial={trial} />,
};
const progress: Column<TrialRow> = {
  key: 'progress',
  head: 'Readings in',
  numeric: true,
  cell: ({ entered, plan }) => `${entered} of ${plannedReadings(plan)}`,
};
const own: Column<TrialRow> = {
  key: 'enter',
  head: 'Your part',
  cell: ({ id, closedAt, entered, plan }) =>
    closedAt === null && entered < plannedReadings(plan) ? (
      <Link href={`${trialAddress(id)}/run`}>Enter readings</Link>
    ) : (
      'done'
    ),
};
const planned = (timeZone: string): Column<TrialRow> => ({
  key: 'planned',
  head: 'Planned',
  whole: true,
  cell: ({ createdAt }) => day(createdAt, timeZone),
});
