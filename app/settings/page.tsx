import type { Metadata } from 'next';
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
import { Thresholds } from './_parts/thresholds';
import { MISS_COST_RANGE, missCosts, reportPlan } from '@/lib/access';
import { said } from '@/app/_shop/said';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Settings' };

export default async function Settings({ searchParams }: { searchParams: Promise<Query> }) {
  const answer = firstOf(await searchParams, 'answer');
  const viewer = await enter();
  const { shop } = viewer;
  const history = await missCosts(viewer);
  const missCost = missCostOf(shop);
  const told = await said();
  return (
    <Page
      title="Settings"
      lead="What this shop decides for itself. Probabilities do not change with it, only what is called on them."
    >
      <Panel id="people" title="People">
        <p>
          Who belongs to the shop, in which role, and who can sign in:{' '}
          <Link href="/settings/people">People</Link>
        </p>
      </Panel>
      <Panel id="trace" title="Trace">
        <p>
          Who entered, changed or excluded what, when, from what to what:{' '}
          <Link href="/settings/trace">Trace</Link>
        </p>
      </Panel>
      <Panel
        id="report"
        title="The batch report by itself"
        note="The same report that the command prints, made from the stored figures and kept here to be fetched."
      >
        {told !== null && (
          <Note live>
            <p>{told}</p>
          </Note>
        )}
        <ReportSchedule plan={await reportPlan(viewer)} timeZone={shop.timeZone} />
        <p>
          Other programs load measurements and fetch reports with a token:{' '}
          <Link href="/settings/tokens">Tokens</Link>
        </p>
      </Panel>
      <Panel id="miss-cost" title="What missing damage costs">
        <div className={prose.prose}>
          <p>
            A height that is called likely gauge is hung again and read again. If the body was off after all
            and nobody looked further, damage was missed; if a gauge is hung again for nothing, some minutes
            are. How much worse the first is decides how sure the program must be before it calls a height
            likely gauge, or neither.
          </p>
          <p>
            Now: one missed damage is worth <b>{missCost}</b> needless re-hangs. So a height is called likely
            gauge from <b>{percent(sureFrom(missCost))}</b> on, while the body keeps at most{' '}
            {percent(1 - sureFrom(missCost))}. The body is suspected from one half on, whatever is set here.
          </p>
          <p>
            The usual value is {DEFAULT_MISS_COST}, on the careful side. If in doubt, set it higher: more
            heights stay undecided and are hung again. No value makes a verdict a clearance of the structure.
          </p>
        </div>
        {answer === 'kept' && (
          <Note live>
            <p>Set. All pages call heights by it from now on.</p>
          </Note>
        )}
        {answer === 'refused' && (
          <Note kind="fault" live>
            <p>
              Nothing was changed: write a number from {MISS_COST_RANGE.least} to {MISS_COST_RANGE.most}.
            </p>
          </Note>
        )}
        <MissCostForm cost={missCost} />
        <Thresholds missCost={missCost} usual={DEFAULT_MISS_COST} />
        <Table
          caption="What was set before, newest first"
          rows={history}
          rowKey={({ at }) => String(at)}
          empty={`Nobody has set it yet: the usual value of ${DEFAULT_MISS_COST} holds.`}
          columns={[
            { key: 'cost', head: 'Cost', names: true, cell: ({ cost }) => cost },
            { key: 'by', head: 'Set by', cell: ({ by }) => by ?? 'not named' },
            { key: 'at', head: 'When', whole: true, cell: ({ at }) => dayAndTime(at, shop.timeZone) },
          ]}
        />
        <p>
          <Link href="/calibration#calls">What heights called likely gauge have proved to be</Link>
        </p>
      </Panel>
    </Page>
  );
}
