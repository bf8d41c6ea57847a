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
import { count, millimetres } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { labelFrom } from '@/app/_words/parameters';
import { day } from '@/app/_words/times';
import { SetupTable } from '@/app/technicians/_parts/setup-table';
import { gaugeEstimates } from '../_parts/estimates';
import { StateNote } from '../_parts/state-note';
import { VerificationChart } from '../_parts/verification-chart';
import { VerificationTable } from '../_parts/verification-table';
import { DroppedForm, LookForm, VerifyForm } from '../_parts/verify-form';
import { allowedError, currentFigures, gaugeVerdict, getGauge, listSetups, may } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';

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
  const [gauge, figures, setups, newest, told] = await Promise.all([
    getGauge(viewer, tag),
    currentFigures(viewer),
    listSetups(viewer, { gauge: tag, page, pageSize: SETUPS_A_PAGE }),
    listSetups(viewer, { pageSize: 1 }),
    said(),
  ]);
  if (gauge === null) notFound();
  const verdict = gaugeVerdict(gauge);
  const overdue = gaugeConcern(gauge, newest.rows[0]?.hungAt ?? 0) === 'verification overdue';
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
            name: 'Tip to fixed mark',
            value: gauge.fixedMark === null ? 'not recorded' : millimetres(gauge.fixedMark),
          },
          {
            name: 'Last verified',
            value: gauge.verifiedAt === null ? 'never' : day(gauge.verifiedAt, shop.timeZone),
            detail: overdue ? <Tag name="caution">overdue: verify it</Tag> : gaugeStateName(gauge.state),
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
      <Panel
        id="verifications"
        title="Verifications"
        note="Whether it passes is judged with the uncertainty of the verification itself; between pass and fail it decides nothing."
      >
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
            <Panel id="verify" title="Verify it">
              <VerifyForm gauge={tag} allowed={allowedError(gauge.kind)} />
              <details>
                <summary>It was only looked at</summary>
                <LookForm gauge={tag} />
              </details>
            </Panel>
          )}
          <Panel
            id="dropped"
            title="It fell, or looks bent"
            note="Anybody may say so, and nobody is blamed for it: what a bent gauge costs is found out weeks later."
          >
            <DroppedForm gauge={tag} />
          </Panel>
        </>
      )}
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
