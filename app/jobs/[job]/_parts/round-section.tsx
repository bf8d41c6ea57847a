import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { Panel } from '@/app/_look/panel';
import type { Hands } from '@/app/_shop/hand-link';
import { recordedDimensions, standardUncertainties } from '@/lib/assess';
import { address, jobAddress, roundAnchor } from '@/app/_words/address';
import { roundName } from '@/app/_words/jobs';
import { millimetres, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { dayAndTime } from '@/app/_words/times';
import type { Learned, RoundVerdict } from '@/lib/assess';
import type { Reading, Round } from '@/lib/measure';
import { CenterlineTable } from './centerline-table';
import { heightRows, toRehang } from './heights';
import { EvidenceLinks } from './evidence-links';
import { HeightTable } from './height-table';
import { RecordedTable } from './recorded-table';
import { SetupList } from './setup-list';
import { WhatNext } from './what-next';
import { ZeroGauges } from './zero-gauges';
import styles from './round-section.module.css';

interface RoundSectionProps {
  round: Round;
  verdict: RoundVerdict | null;
  learned: Learned | null;
  readings: readonly Reading[];
  timeZone: string;
  /** What missing damage costs against a needless re-hang. */
  missCost: number;
  hands: Hands;
}

/** One measuring of the job: what to do next, every dimension, and the setups behind them. */
export const RoundSection = drawnOnce(function RoundSection({
  round,
  verdict,
  learned,
  readings,
  timeZone,
  missCost,
  hands,
}: RoundSectionProps) {
  const t = words('jobs');
  const anchor = roundAnchor(round.stage, round.attempt);
  const rows = heightRows(round, verdict, missCost);
  const record = recordedDimensions(round);
  const uncertainties = learned === null ? new Map<string, number>() : standardUncertainties(round, learned);
  const lengths = record.filter((dimension) => dimension.quantity === 'length');
  const centerline = record.filter((dimension) => dimension.quantity === 'centerline');
  return (
    <Panel id={anchor} title={roundName(round.stage, round.attempt)} note={note(round, timeZone)}>
      {verdict?.decidable === true && rows.some((row) => row.zero) && <ZeroGauges p={verdict.pZeroMisset} />}
      <WhatNext verdict={verdict} rehang={toRehang(rows)} />
      {(rows.length > 0 || centerline.length > 0) && <EvidenceLinks round={round} />}
      {rows.length > 0 && (
        <p className={styles.small} data-print="no">
          <Link href={`${address(jobAddress(round.job), { show: anchor })}#picture`} prefetch={false}>
            {t('round.inPicture')}
          </Link>
        </p>
      )}
      {rows.length > 0 && (
        <HeightTable rows={rows} clearance={round.clearance} uncertainties={uncertainties} name={anchor} />
      )}
      {lengths.length > 0 && (
        <RecordedTable
          caption={t('round.lengths', { unit: unit() })}
          rows={lengths}
          uncertainties={uncertainties}
          name={anchor}
        />
      )}
      {centerline.length > 0 && (
        <CenterlineTable
          rows={centerline}
          round={verdict}
          uncertainties={uncertainties}
          name={anchor}
          missCost={missCost}
        />
      )}
      <p className={styles.small}>{t('round.uncertainty')}</p>
      <details className={styles.setups} data-print="open" open={round.setups.length <= 3}>
        <summary>{t('round.setups', { n: round.setups.length })}</summary>
        <SetupList
          setups={round.setups}
          readings={readings}
          timeZone={timeZone}
          job={round.job}
          name={anchor}
          hands={hands}
        />
      </details>
    </Panel>
  );
});

function note(round: Round, timeZone: string): string {
  const first = round.setups[0];
  const when = first === undefined ? '' : `${dayAndTime(first.takenAt, timeZone)}. `;
  const technicians = [...new Set(round.setups.map((setup) => setup.technician))].join(', ');
  const clearance = millimetres(round.clearance, 0);
  return words('jobs')('round.note', { when, technicians, clearance });
}
