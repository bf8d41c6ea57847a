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
import { currentFigures, listGauges, newestHanging } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { inOrder } from '@/app/_words/in-order';

export const generateMetadata = titled(() => words('gauges')('title'));

export default async function Gauges() {
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('gauges');
  const [gauges, figures, newest] = await Promise.all([
    listGauges(viewer),
    currentFigures(viewer),
    newestHanging(viewer),
  ]);
  const now = newest ?? 0;
  const out = gauges.filter(({ state }) => state === 'out-of-service');
  if (gauges.length === 0) {
    return (
      <Page title={t('title')}>
        <Empty title={t('none.title')} action={<Link href="/load">{t('none.load')}</Link>}>
          <p>{t('none.text')}</p>
        </Empty>
      </Page>
    );
  }
  return (
    <Page title={t('title')} lead={t('lead')}>
      <ExcludedNote viewer={viewer} />
      {out.length > 0 && (
        <Note kind="caution">
          <p>{t('out', { n: out.length, tags: out.map(({ tag }) => tag).join(', ') })}</p>
        </Note>
      )}
      <Panel id="list" title={t('list.title')}>
        <Table
          caption={t('list.caption')}
          rows={[...gauges].sort((a, b) => inOrder(a.tag, b.tag))}
          rowKey={(gauge) => gauge.tag}
          columns={[
            {
              key: 'tag',
              head: t('list.tag'),
              names: true,
              cell: (gauge) => (
                <Link href={gaugeAddress(gauge.tag)} prefetch={false}>
                  {gauge.tag}
                </Link>
              ),
            },
            { key: 'state', head: t('list.state'), cell: (gauge) => <StateTag gauge={gauge} /> },
            {
              key: 'verified',
              head: t('list.verified'),
              whole: true,
              cell: (gauge) => (
                <>
                  {gauge.verifiedAt === null ? t('list.noRecord') : day(gauge.verifiedAt, shop.timeZone)}
                  {gaugeConcern(gauge, now) === 'verification overdue' && (
                    <>
                      {' '}
                      <Tag name="caution">{t('list.overdue')}</Tag>
                    </>
                  )}
                </>
              ),
            },
            { key: 'kind', head: t('list.kind'), whole: true, cell: (gauge) => kindName(gauge.kind) },
            {
              key: 'mark',
              head: t('fixedMark'),
              numeric: true,
              cell: (gauge) => (gauge.fixedMark === null ? t('notRecorded') : millimetres(gauge.fixedMark)),
            },
          ]}
        />
      </Panel>
      {figures !== null && (
        <Panel id="bias" title={t('bias.title')} note={t('bias.listNote')}>
          <EstimateTable
            caption={t('bias.listCaption')}
            head={t('gauge')}
            kind="bias"
            estimates={gaugeEstimates(figures.figures.gauges)}
          />
          <DownloadLinks
            of={t('bias.download')}
            csv="/figures/gauges/download"
            picture="/figures/gauges/picture"
          />
        </Panel>
      )}
    </Page>
  );
}
