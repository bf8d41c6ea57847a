import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Table } from '@/app/_look/table';
import { jobAddress } from '@/app/_words/address';
import {
  bareMillimetres,
  brief,
  briefMillimetres,
  decimal,
  percent,
  probability,
  unit,
} from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { SdEstimate } from '@/lib/assess';
import type { RiskAnswer } from '@/lib/assess/answers';
import { guardBands, USUAL_TOLERANCE, WANTED_RISK, type PlaceGuard } from './guard-bands';
import { likeliestWrong } from './likeliest-wrong';
import styles from './rate-table.module.css';

/** A page shows so many; the file has them all. */
const SHOWN = 12;

interface MeasuringErrorProps {
  risk: RiskAnswer;
  shop: { setting: SdEstimate; repeatability: SdEstimate } | null;
}

/** What the rate would be without measuring error, as expected, and the jobs in which it matters most. */
export const MeasuringError = drawnOnce(function MeasuringError({ risk, shop }: MeasuringErrorProps) {
  const t = words('rates');
  const { trueRate, calledRate, jobs } = risk;
  const guards = shop === null ? null : guardBands(shop, risk.prior);
  return (
    <>
      <p>{told(risk.sentence)}</p>
      <FiguresRow
        figures={[
          figureOf(t('error.wronglyRight'), risk.wronglyRight),
          figureOf(t('error.wronglyNotRight'), risk.wronglyNotRight),
          figureOf(t('error.again'), risk.workedOnAgain),
          {
            name: t('error.trulyRight'),
            value: trueRate.expected === null ? t('none') : percent(trueRate.expected),
            detail: t('error.trulyDetail', {
              interval:
                trueRate.low === null || trueRate.high === null
                  ? t('noInterval')
                  : t('range', { low: percent(trueRate.low), high: percent(trueRate.high) }),
              called: calledRate === null ? t('none') : percent(calledRate),
            }),
          },
        ]}
      />
      <Note kind="caution">
        <p>{t('error.caution')}</p>
      </Note>
      <Table
        caption={t('error.caption', { shown: Math.min(SHOWN, jobs.length), kept: jobs.length })}
        rows={likeliestWrong(jobs, SHOWN)}
        rowKey={({ job }) => job}
        empty={t('error.empty')}
        columns={[
          {
            key: 'job',
            head: t('error.job'),
            names: true,
            cell: ({ job }) => (
              <Link href={jobAddress(job)} prefetch={false}>
                {job}
              </Link>
            ),
          },
          {
            key: 'called',
            head: t('error.called'),
            cell: ({ calledRight }) => t(calledRight ? 'error.right' : 'error.notRight'),
          },
          {
            key: 'truly',
            head: t('error.truly'),
            numeric: true,
            cell: ({ trulyRight }) => probability(trulyRight),
          },
          {
            key: 'again',
            head: t('error.workedOn'),
            cell: ({ again }) => t(again ? 'error.yes' : 'error.no'),
          },
        ]}
      />
      <DownloadLinks of={t('error.download')} csv="/rates/error" />
      <h3>{t('guard.title')}</h3>
      {guards === null ? (
        <p>{t('guard.notKnown')}</p>
      ) : (
        <GuardTable guards={guards} offShare={risk.prior.offShare} />
      )}
      <div className={styles.notes}>
        <details>
          <summary>{t('error.how')}</summary>
          <p>{told(risk.method)}</p>
          {risk.prior.why !== null && <p>{told(risk.prior.why)}</p>}
        </details>
      </div>
    </>
  );
});

const figureOf = (name: string, { expected, low, high, of }: RiskAnswer['wronglyRight']) => ({
  name,
  value: expected === null ? words('rates')('none') : decimal(expected, 1),
  detail:
    low === null || high === null
      ? words('rates')('error.expectedNoInterval', { n: of })
      : words('rates')('error.expected', { low: brief(low), high: brief(high), n: of }),
});

function GuardTable({ guards, offShare }: { guards: PlaceGuard[]; offShare: number }) {
  const t = words('rates');
  const tolerance = briefMillimetres(USUAL_TOLERANCE);
  return (
    <>
      <p className={styles.notes}>{t('guard.what', { tolerance, risk: percent(WANTED_RISK) })}</p>
      <Table<PlaceGuard>
        caption={t('guard.caption', { tolerance })}
        rows={guards}
        rowKey={({ place }) => place}
        columns={[
          {
            key: 'place',
            head: t('guard.height'),
            names: true,
            wraps: true,
            cell: ({ place }) => t(`guard.places.${place}`),
          },
          {
            key: 'u',
            head: t('guard.uncertainty', { unit: unit() }),
            numeric: true,
            cell: ({ uncertainty }) => bareMillimetres(uncertainty, 2),
          },
          {
            key: 'without',
            head: t('guard.without'),
            numeric: true,
            cell: ({ guard: { without } }) =>
              without.outGivenAccepted === null ? t('none') : probability(without.outGivenAccepted),
          },
          {
            key: 'guard',
            head: t('guard.guard', { unit: unit() }),
            numeric: true,
            cell: ({ guard: { guard, why } }) =>
              guard === null
                ? told(why ?? '')
                : guard === 0
                  ? t('guard.noneNeeded')
                  : bareMillimetres(guard, 2),
          },
          {
            key: 'cost',
            head: t('guard.cost'),
            numeric: true,
            cell: ({ guard: { without, risks } }) =>
              `${probability(without.producer)}, ${risks === null ? t('none') : probability(risks.producer)}`,
          },
        ]}
      />
      <p className={styles.notes}>{t('guard.rests', { share: probability(offShare) })}</p>
    </>
  );
}
