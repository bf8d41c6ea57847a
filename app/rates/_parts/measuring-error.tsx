import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Table } from '@/app/_look/table';
import { jobAddress } from '@/app/_words/address';
import { bareMillimetres, count, percent, probability } from '@/app/_words/numbers';
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
export function MeasuringError({ risk, shop }: MeasuringErrorProps) {
  const { trueRate, calledRate, jobs } = risk;
  const guards = shop === null ? null : guardBands(shop, risk.prior);
  return (
    <>
      <p>{risk.sentence}</p>
      <FiguresRow
        figures={[
          figureOf('Called right, expected not to be', risk.wronglyRight),
          figureOf('Called not right, expected to have been', risk.wronglyNotRight),
          figureOf('Of those, worked on again', risk.workedOnAgain),
          {
            name: 'Truly right, as expected',
            value: trueRate.expected === null ? 'none' : percent(trueRate.expected),
            detail: `${trueRate.low === null || trueRate.high === null ? 'no interval' : `${percent(trueRate.low)} to ${percent(trueRate.high)}`}, called ${calledRate === null ? 'none' : percent(calledRate)}`,
          },
        ]}
      />
      <Note kind="caution">
        <p>
          This counts calls, it clears no vehicle: which of the jobs were right it does not say. A job that
          was called not right stays so until it is hung again and read again.
        </p>
      </Note>
      <Table
        caption={`Jobs that are likeliest to be called wrongly: ${Math.min(SHOWN, jobs.length)} of the ${jobs.length} that are kept, in the order of their numbers`}
        rows={likeliestWrong(jobs, SHOWN)}
        rowKey={({ job }) => job}
        empty="No job has been measured after its repair."
        columns={[
          {
            key: 'job',
            head: 'Job',
            names: true,
            cell: ({ job }) => (
              <Link href={jobAddress(job)} prefetch={false}>
                {job}
              </Link>
            ),
          },
          { key: 'called', head: 'Called', cell: ({ calledRight }) => (calledRight ? 'right' : 'not right') },
          {
            key: 'truly',
            head: 'Probability that all of it was within',
            numeric: true,
            cell: ({ trulyRight }) => probability(trulyRight),
          },
          { key: 'again', head: 'Worked on again', cell: ({ again }) => (again ? 'yes' : 'no') },
        ]}
      />
      <DownloadLinks of="jobs likeliest to be called wrongly" csv="/rates/error" />
      <h3>How far inside the tolerance a reading must lie</h3>
      {guards === null ? (
        <p>
          The shop’s scatter of setting and reading is not known yet, so there is nothing to reckon a guard
          band from.
        </p>
      ) : (
        <GuardTable guards={guards} offShare={risk.prior.offShare} />
      )}
      <div className={styles.notes}>
        <details>
          <summary>How these figures are reached</summary>
          <p>{risk.method}</p>
          {risk.prior.why !== null && <p>{risk.prior.why}</p>}
        </details>
      </div>
    </>
  );
}

const figureOf = (name: string, { expected, low, high, of }: RiskAnswer['wronglyRight']) => ({
  name,
  value: expected === null ? 'none' : expected.toFixed(1),
  detail: `${low === null || high === null ? 'no interval' : `95 %: ${low} to ${high}`}, of ${count(of, 'job')}`,
});

function GuardTable({ guards, offShare }: { guards: PlaceGuard[]; offShare: number }) {
  return (
    <>
      <p className={styles.notes}>
        A height read within ±{USUAL_TOLERANCE} mm may truly be out, since the reading is uncertain. A guard
        band is the margin inside the tolerance that a reading must keep so that no more than{' '}
        {percent(WANTED_RISK)} of the heights accepted are truly out. It costs needless work: of the heights
        truly within, more are rejected.
      </p>
      <Table<PlaceGuard>
        caption={`For an ordinary setting in this shop, read once, at ±${USUAL_TOLERANCE} mm; mis-sets are not in it, the verdicts look for those`}
        rows={guards}
        rowKey={({ place }) => place}
        columns={[
          { key: 'place', head: 'Height', names: true, wraps: true, cell: ({ place }) => place },
          {
            key: 'u',
            head: 'Standard uncertainty, mm',
            numeric: true,
            cell: ({ uncertainty }) => bareMillimetres(uncertainty, 2),
          },
          {
            key: 'without',
            head: 'Truly out of those accepted, no guard band',
            numeric: true,
            cell: ({ guard: { without } }) =>
              without.outGivenAccepted === null ? 'none' : probability(without.outGivenAccepted),
          },
          {
            key: 'guard',
            head: 'Guard band, mm',
            numeric: true,
            cell: ({ guard: { guard, why } }) =>
              guard === null ? why : guard === 0 ? 'none needed' : bareMillimetres(guard, 2),
          },
          {
            key: 'cost',
            head: 'Within, yet rejected, of all: without it, with it',
            numeric: true,
            cell: ({ guard: { without, risks } }) =>
              `${probability(without.producer)}, ${risks === null ? 'none' : probability(risks.producer)}`,
          },
        ]}
      />
      <p className={styles.notes}>
        It is small where repairs seldom leave a height out: in this shop about {probability(offShare)} of the
        final dimensions are taken as not put right. The figures have no interval of their own, since these
        shares and scatters are taken as known.
      </p>
    </>
  );
}
