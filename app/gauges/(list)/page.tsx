import type { Metadata } from 'next';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { gaugeConcern } from '@/app/_overview/attention';
import { Empty } from '@/app/_look/empty';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { gaugeAddress } from '@/app/_words/address';
import { kindName, StateTag } from '@/app/_words/gauges';
import { millimetres } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import { gaugeEstimates } from '../_parts/estimates';
import { currentFigures, listGauges, listSetups } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Gauges' };

export default async function Gauges() {
  const viewer = await enter();
  const { shop } = viewer;
  const [gauges, figures, newest] = await Promise.all([
    listGauges(viewer),
    currentFigures(viewer),
    listSetups(viewer, { page: 1, pageSize: 1 }),
  ]);
  const now = newest.rows[0]?.hungAt ?? 0;
  const out = gauges.filter(({ state }) => state === 'out-of-service');
  if (gauges.length === 0) {
    return (
      <Page title="Gauges">
        <Empty title="No gauge is known yet" action={<Link href="/load">Load a measurement file</Link>}>
          <p>Gauges appear with the first file that names their asset tags.</p>
        </Empty>
      </Page>
    );
  }
  return (
    <Page
      title="Gauges"
      lead="A gauge that was dropped or looks bent is out of service until it is verified."
    >
      {out.length > 0 && (
        <Note kind="caution">
          <p>
            Out of service until verified: {out.map(({ tag }) => tag).join(', ')}. Do not hang{' '}
            {out.length === 1 ? 'it' : 'them'}.
          </p>
        </Note>
      )}
      <Panel id="list" title="State of service">
        <Table
          caption="Gauges in the order of their asset tags"
          rows={[...gauges].sort((a, b) => a.tag.localeCompare(b.tag, 'en', { numeric: true }))}
          rowKey={(gauge) => gauge.tag}
          columns={[
            {
              key: 'tag',
              head: 'Asset tag',
              names: true,
              cell: (gauge) => (
                <Link href={gaugeAddress(gauge.tag)} prefetch={false}>
                  {gauge.tag}
                </Link>
              ),
            },
            { key: 'state', head: 'State', cell: (gauge) => <StateTag gauge={gauge} /> },
            {
              key: 'verified',
              head: 'Last verified',
              whole: true,
              cell: (gauge) => (
                <>
                  {gauge.verifiedAt === null ? 'not on record' : day(gauge.verifiedAt, shop.timeZone)}
                  {gaugeConcern(gauge, now) === 'verification overdue' && (
                    <>
                      {' '}
                      <Tag name="caution">overdue</Tag>
                    </>
                  )}
                </>
              ),
            },
            { key: 'kind', head: 'Kind', whole: true, cell: (gauge) => kindName(gauge.kind) },
            {
              key: 'mark',
              head: 'Tip to fixed mark',
              numeric: true,
              cell: (gauge) => (gauge.fixedMark === null ? 'not recorded' : millimetres(gauge.fixedMark)),
            },
          ]}
        />
      </Panel>
      {figures !== null && (
        <Panel
          id="bias"
          title="Bias"
          note="Whether heights read with this gauge come out high or low, technicians set aside. Where the interval leaves zero out, verify the gauge."
        >
          <EstimateTable
            caption="Bias of heights, by gauge"
            head="Gauge"
            kind="bias"
            estimates={gaugeEstimates(figures.figures.gauges)}
          />
          <DownloadLinks
            of="bias by gauge"
            csv="/figures/gauges/download"
            picture="/figures/gauges/picture"
          />
        </Panel>
      )}
    </Page>
  );
}
