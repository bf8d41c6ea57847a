import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { Tag } from '@/app/_look/tag';
import { gaugeConcern } from '@/app/_overview/attention';
import { address, gaugeAddress, type Query } from '@/app/_words/address';
import { kindName, gaugeStateName, StateTag } from '@/app/_words/gauges';
import { grouped, millimetres } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { labelFrom } from '@/app/_words/parameters';
import { day } from '@/app/_words/times';
import { OwnSignals } from '@/app/rates/signals/_parts/own-signals';
import { SetupTable } from '@/app/technicians/_parts/setup-table';
import { gaugeEstimates } from '../_parts/estimates';
import { StateNote } from '../_parts/state-note';
import { VerificationChart } from '../_parts/verification-chart';
import { VerificationTable } from '../_parts/verification-table';
import { DroppedForm, LookForm, VerifyForm } from '../_parts/verify-form';
import {
  allowedError,
  currentFigures,
  gaugeVerdict,
  getGauge,
  listSetups,
  may,
  newestHanging,
  signalsOf,
} from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { handsOf } from '@/app/_shop/hand-link';
import { said } from '@/app/_shop/said';
import { hear } from '@/app/_words/speech';
import { words } from '@/app/_words/words';

interface Props {
  params: Promise<{ tag: string }>;
  searchParams: Promise<Query>;
}

const SETUPS_A_PAGE = 20;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await hear();
  return { title: words('gauges')('named', { tag: labelFrom((await params).tag) }) };
}

export default async function GaugePage({ params, searchParams }: Props) {
  const tag = labelFrom((await params).tag);
  const page = pageNumber(await searchParams);
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('gauges');
  const [gauge, figures, changes, setups, newest, told] = await Promise.all([
    getGauge(viewer, tag),
    currentFigures(viewer),
    signalsOf(viewer, 'gauge', tag),
    listSetups(viewer, { gauge: tag, page, pageSize: SETUPS_A_PAGE }),
    newestHanging(viewer),
    said(),
  ]);
  if (gauge === null) notFound();
  const verdict = gaugeVerdict(gauge);
  const overdue = gaugeConcern(gauge, newest ?? 0) === 'verification overdue';
  const own = figures?.figures.gauges.filter((one) => one.gauge === tag) ?? [];

  return (
    <Page
      above={<Link href="/gauges">{t('all')}</Link>}
      title={t('named', { tag })}
      lead={
        <>
          {kindName(gauge.kind)}. <StateTag gauge={gauge} />
        </>
      }
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <StateNote gauge={gauge} verdict={verdict} />
      <ExcludedNote viewer={viewer} filter={{ gauge: tag }} />
      <FiguresRow
        figures={[
          {
            name: t('fixedMark'),
            value: gauge.fixedMark === null ? t('notRecorded') : millimetres(gauge.fixedMark),
          },
          {
            name: t('verified'),
            value: gauge.verifiedAt === null ? t('never') : day(gauge.verifiedAt, shop.timeZone),
            detail: overdue ? <Tag name="caution">{t('overdue')}</Tag> : gaugeStateName(gauge.state),
          },
          { name: t('setups.name'), value: grouped(setups.total) },
        ]}
      />
      <Panel id="bias" title={t('bias.title')} note={t('bias.note')}>
        <EstimateTable
          caption={t('bias.caption', { tag })}
          head={t('gauge')}
          kind="bias"
          estimates={gaugeEstimates(own)}
          empty={t('bias.none')}
        />
        <OwnSignals signals={changes} charts={may(viewer, 'see everybody’s figures')} />
      </Panel>
      <Panel id="verifications" title={t('verifications.title')} note={t('verifications.note')}>
        {verdict.verifications.length > 0 && (
          <VerificationChart
            gauge={tag}
            verdict={verdict}
            allowed={allowedError(gauge.kind)}
            doubts={gauge.verifications
              .filter((one) => one.error === null && !one.passed)
              .map(({ at }) => at)}
            timeZone={shop.timeZone}
          />
        )}
        <VerificationTable verifications={gauge.verifications} verdict={verdict} timeZone={shop.timeZone} />
      </Panel>
      {gauge.state !== 'retired' && (
        <>
          {may(viewer, 'keep gauges') && (
            <Panel id="verify" title={t('verify.title')}>
              <VerifyForm gauge={tag} allowed={allowedError(gauge.kind)} />
              <details>
                <summary>{t('look.title')}</summary>
                <LookForm gauge={tag} />
              </details>
            </Panel>
          )}
          <Panel id="dropped" title={t('dropped.title')} note={t('dropped.note')}>
            <DroppedForm gauge={tag} />
          </Panel>
        </>
      )}
      <Panel id="setups" title={t('setups.title')} note={t('setups.note')}>
        <SetupTable
          setups={setups.rows}
          timeZone={shop.timeZone}
          hands={handsOf(viewer)}
          show="technician"
          caption={t('setups.caption', { n: setups.total, tag })}
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
