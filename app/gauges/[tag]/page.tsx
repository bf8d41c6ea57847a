import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { FiguresRow } from '@/app/_look/figures-row';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { address, gaugeAddress, type Query } from '@/app/_words/address';
import { kindName, STATE_NAMES, StateTag } from '@/app/_words/gauges';
import { count, millimetres, signedMillimetres } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { labelFrom } from '@/app/_words/parameters';
import { day } from '@/app/_words/times';
import { SetupTable } from '@/app/technicians/_parts/setup-table';
import { gaugeEstimates } from '../_parts/estimates';
import { currentFigures, getGauge, listSetups } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

interface Props {
  params: Promise<{ tag: string }>;
  searchParams: Promise<Query>;
}

const SETUPS_A_PAGE = 20;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Gauge ${labelFrom((await params).tag)}` };
}

export default async function GaugePage({ params, searchParams }: Props) {
  const tag = labelFrom((await params).tag);
  const page = pageNumber(await searchParams);
  const viewer = await enter();
  const { shop } = viewer;
  const [gauge, figures, setups] = await Promise.all([
    getGauge(viewer, tag),
    currentFigures(viewer),
    listSetups(viewer, { gauge: tag, page, pageSize: SETUPS_A_PAGE }),
  ]);
  if (gauge === null) notFound();
  const own = figures?.figures.gauges.filter((one) => one.gauge === tag) ?? [];

  return (
    <Page
      above={<Link href="/gauges">All gauges</Link>}
      title={`Gauge ${gauge.tag}`}
      lead={
        <>
          {kindName(gauge.kind)}. <StateTag gauge={gauge} />
        </>
      }
    >
      <FiguresRow
        figures={[
          {
            name: 'Tip to fixed mark',
            value: gauge.fixedMark === null ? 'not recorded' : millimetres(gauge.fixedMark),
          },
          {
            name: 'Last verified',
            value: gauge.verifiedAt === null ? 'never' : day(gauge.verifiedAt, shop.timeZone),
            detail: STATE_NAMES[gauge.state],
          },
          { name: 'Setups', value: setups.total },
        ]}
      />
      <Panel
        id="bias"
        title="Bias"
        note="Whether heights read with this gauge come out high or low, technicians set aside."
      >
        <EstimateTable
          caption={`Bias of heights read with ${gauge.tag}`}
          head="Gauge"
          kind="bias"
          estimates={gaugeEstimates(own)}
          empty="Not known yet: it takes heights read with this and with other gauges."
        />
      </Panel>
      <Panel id="verifications" title="Verifications">
        <Table
          caption="Verifications on record, newest first"
          rows={[...gauge.verifications].sort((a, b) => b.at - a.at)}
          rowKey={(one) => String(one.at)}
          empty="None on record. Verify against a reference length before this gauge is relied on."
          columns={[
            { key: 'at', head: 'Day', names: true, cell: (one) => day(one.at, shop.timeZone) },
            {
              key: 'result',
              head: 'Result',
              cell: (one) => (
                <Tag name={one.passed ? 'within' : 'out'}>{one.passed ? 'passed' : 'failed'}</Tag>
              ),
            },
            {
              key: 'error',
              head: 'Error found',
              numeric: true,
              cell: (one) => (one.error === null ? 'not measured' : signedMillimetres(one.error)),
            },
            { key: 'by', head: 'By', cell: (one) => one.by ?? 'not named' },
            { key: 'note', head: 'Note', cell: (one) => one.note ?? '' },
          ]}
        />
      </Panel>
      <Panel
        id="setups"
        title="Setups with this gauge"
        note="Newest first. The label of a setup opens its readings on the job’s page."
      >
        <SetupTable
          setups={setups.rows}
          timeZone={shop.timeZone}
          show="technician"
          caption={`${count(setups.total, 'setup')} with ${gauge.tag}`}
        />
        <Pager
          page={page}
          pages={Math.max(1, Math.ceil(setups.total / SETUPS_A_PAGE))}
          to={(number) => `${address(gaugeAddress(tag), { page: number })}#setups`}
        />
      </Panel>
    </Page>
  );
}
