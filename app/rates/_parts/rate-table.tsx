import Link from 'next/link';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { percent } from '@/app/_words/numbers';
import type { FairRate, FairRates } from '@/lib/assess/rates';
import { rateAddress, type RateQuestion } from './question';
import styles from './rate-table.module.css';
import { filterWords, GROUPING_NAMES, groupName, pWords, PLACE_GLYPHS, PLACE_NAMES } from './words';

/** Every group with all that a fair comparison needs, in the order of names. */
export function RateTable({ rates, question }: { rates: FairRates; question: RateQuestion }) {
  const { by, groups } = rates;
  return (
    <Table<FairRate>
      caption={`Right first time by ${GROUPING_NAMES[by].toLowerCase()}, ${filterWords(question)}; in the order of names`}
      rows={groups}
      rowKey={({ name }) => name}
      empty="No job that fits all of this has come to an answer yet."
      columns={[
        {
          key: 'name',
          head: GROUPING_NAMES[by],
          names: true,
          cell: ({ name }) => (
            <Link href={rateAddress('/rates/jobs', question, { group: name })} prefetch={false}>
              {groupName(by, name)}
            </Link>
          ),
        },
        {
          key: 'jobs',
          head: 'Right of jobs',
          numeric: true,
          cell: ({ right, jobs }) => `${right} of ${jobs}`,
        },
        {
          key: 'rate',
          head: 'Rate, 95 % interval',
          numeric: true,
          cell: ({ rate, low, high, why }) =>
            rate === null ? (
              (why ?? 'none')
            ) : (
              <Estimate value={percent(rate)} low={low} high={high} print={percent} />
            ),
        },
        {
          key: 'shrunk',
          head: 'Drawn to all',
          numeric: true,
          cell: ({ shrunk: { mean, low, high }, small }) =>
            mean === null ? (
              'none'
            ) : (
              <Estimate
                value={`${percent(mean)}${small ? ' *' : ''}`}
                low={low}
                high={high}
                print={percent}
              />
            ),
        },
        {
          key: 'place',
          head: 'In the funnel',
          cell: ({ funnel: { place } }) =>
            place === null ? 'none' : <Tag name={PLACE_GLYPHS[place]}>{PLACE_NAMES[place]}</Tag>,
        },
        {
          key: 'ratio',
          head: 'Observed over expected',
          numeric: true,
          cell: ({ adjusted: { ratio, low, high } }) =>
            ratio === null ? 'none' : <Estimate value={two(ratio)} low={low} high={high} print={two} />,
        },
        {
          key: 'p',
          head: 'p, adjusted',
          numeric: true,
          cell: ({ adjusted: { p } }) => (p === null ? 'none' : pWords(p)),
        },
      ]}
    />
  );
}

/** Why groups are marked and figures are missing, and what a reader must know. */
export function RateNotes({ rates: { groups, notes, overall, by, hardness }, rates }: { rates: FairRates }) {
  const small = groups.filter((group) => group.small);
  const whys = [...new Set(groups.flatMap(({ adjusted }) => (adjusted.why === null ? [] : [adjusted.why])))];
  return (
    <div className={styles.notes}>
      <ul>
        {small.map(({ name, smallWhy }) => (
          <li key={name}>
            * {groupName(by, name)}: {smallWhy}
          </li>
        ))}
        {whys.map((why) => (
          <li key={why}>No observed over expected: {why}</li>
        ))}
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
        {rates.funnel.tau > 0 && (
          <li>
            The funnel is widened, since the groups differ beyond chance (sd of their rates{' '}
            {(100 * rates.funnel.tau).toFixed(0)} points): a group within it may still differ from what its
            jobs let expect, as observed over expected tells.
          </li>
        )}
        {by === 'section' && (
          <li>
            Sections are counted here, not jobs: {overall.right} of {overall.jobs} are right.
          </li>
        )}
        {groups.length > 1 && (
          <li>
            Of {groups.length} groups that do not differ, about{' '}
            {(groups.length * 0.05).toFixed(groups.length < 20 ? 1 : 0)} lie beyond the 95 % limits by chance.
            Beyond the 99.8 % limits chance alone is rare.
          </li>
        )}
      </ul>
      <details>
        <summary>How these figures are reached</summary>
        <ul>
          <li>Rate: right jobs over jobs, with Wilson’s 95 % interval.</li>
          <li>
            Drawn to all: the same rate, shrunk towards that of all groups as far as its own jobs say little
            (beta-binomial), with its 95 % limits.
          </li>
          <li>In the funnel: {rates.funnel.method}</li>
          <li>
            Observed over expected: right jobs over those that would be right at the shop’s rate for jobs as
            hard, with the exact 95 % interval; 1 is as expected. p is two-sided and adjusted over the table
            (Benjamini–Hochberg).
          </li>
          {hardness !== null && <li>How hard a job was: {hardness.why ?? hardness.method}</li>}
          {hardness !== null &&
            hardness.coefficients.map(({ name, estimate, low, high }) => (
              <li key={name}>
                {name}: {two(estimate)}
                {` (${two(low)} to ${two(high)})`} on the log-odds of right first time
              </li>
            ))}
        </ul>
      </details>
    </div>
  );
}

function Estimate({
  value,
  low,
  high,
  print,
}: {
  value: string;
  low: number | null;
  high: number | null;
  print: (value: number) => string;
}) {
  return (
    <>
      {value}
      <span className={styles.interval}>
        {low === null || high === null ? 'no interval' : `${print(low)} to ${print(high)}`}
      </span>
    </>
  );
}

const two = (value: number): string => value.toFixed(2).replace('-', '−');
