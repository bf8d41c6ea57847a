import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { decimal, grouped, percent } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { FairRate, FairRates } from '@/lib/assess/rates';
import { rateAddress, type RateQuestion } from './question';
import styles from './rate-table.module.css';
import {
  filterWords,
  groupingInSentence,
  groupingName,
  groupName,
  placeName,
  pWords,
  PLACE_GLYPHS,
} from './words';

/** Every group with all that a fair comparison needs, in the order of names. */
export const RateTable = drawnOnce(function RateTable({
  rates,
  question,
}: {
  rates: FairRates;
  question: RateQuestion;
}) {
  const t = words('rates');
  const { by, groups } = rates;
  return (
    <Table<FairRate>
      caption={t(by === 'month' ? 'table.captionInTime' : 'table.caption', {
        by: groupingInSentence(by),
        counted: filterWords(question),
      })}
      rows={groups}
      rowKey={({ name }) => name}
      empty={t('table.empty')}
      columns={[
        {
          key: 'name',
          head: groupingName(by),
          names: true,
          cell: ({ name }) => (
            <Link href={rateAddress('/rates/jobs', question, { group: name })} prefetch={false}>
              {groupName(by, name)}
            </Link>
          ),
        },
        {
          key: 'jobs',
          head: t('table.jobs'),
          numeric: true,
          cell: ({ right, jobs }) => t('table.of', { right: grouped(right), jobs: grouped(jobs) }),
        },
        {
          key: 'rate',
          head: t('table.rate'),
          numeric: true,
          cell: ({ rate, low, high, why }) =>
            rate === null ? (
              why === null ? (
                t('none')
              ) : (
                told(why)
              )
            ) : (
              <Estimate value={percent(rate)} low={low} high={high} print={percent} />
            ),
        },
        {
          key: 'shrunk',
          head: t('table.shrunk'),
          numeric: true,
          cell: ({ shrunk: { mean, low, high }, small }) =>
            mean === null ? (
              t('none')
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
          head: t('table.place'),
          cell: ({ funnel: { place } }) =>
            place === null ? t('none') : <Tag name={PLACE_GLYPHS[place]}>{placeName(place)}</Tag>,
        },
        {
          key: 'ratio',
          head: t('table.ratio'),
          numeric: true,
          cell: ({ adjusted: { ratio, low, high } }) =>
            ratio === null ? t('none') : <Estimate value={two(ratio)} low={low} high={high} print={two} />,
        },
        {
          key: 'p',
          head: t('table.p'),
          numeric: true,
          cell: ({ adjusted: { p } }) => (p === null ? t('none') : pWords(p)),
        },
      ]}
    />
  );
});

/** So many small groups have a line each; what is the same of more is said once. */
const EACH_BY_ITSELF = 2;

/** Why groups are marked and figures are missing, and what a reader must know. */
export const RateNotes = drawnOnce(function RateNotes({
  rates: { groups, notes, overall, by, hardness },
  rates,
}: {
  rates: FairRates;
}) {
  const t = words('rates');
  const small = groups.filter((group) => group.small);
  const whys = [...new Set(groups.flatMap(({ adjusted }) => (adjusted.why === null ? [] : [adjusted.why])))];
  return (
    <div className={styles.notes}>
      <ul>
        {small.length <= EACH_BY_ITSELF &&
          small.map(({ name, jobs }) => (
            <li key={name}>{t('notes.small', { name: groupName(by, name), n: jobs })}</li>
          ))}
        {small.length > EACH_BY_ITSELF && (
          <li>{t('notes.smallMany', { names: small.map(({ name }) => groupName(by, name)).join(', ') })}</li>
        )}
        {whys.map((why) => (
          <li key={why}>{t('notes.noRatio', { why: told(why) })}</li>
        ))}
        {notes.map((note) => (
          <li key={note}>{told(note)}</li>
        ))}
        {rates.funnel.tau > 0 && (
          <li>{t('notes.widened', { points: decimal(100 * rates.funnel.tau, 0) })}</li>
        )}
        {by === 'section' && <li>{t('notes.sections', { right: overall.right, jobs: overall.jobs })}</li>}
        {groups.length > 1 && (
          <li>
            {t('notes.chance', {
              groups: groups.length,
              outside: decimal(groups.length * 0.05, groups.length < 20 ? 1 : 0),
            })}
          </li>
        )}
      </ul>
      <details>
        <summary>{t('notes.how')}</summary>
        <ul>
          <li>{t('notes.rate')}</li>
          <li>{t('notes.shrunk')}</li>
          <li>{t('notes.funnel', { method: told(rates.funnel.method) })}</li>
          <li>{t('notes.ratio')}</li>
          {hardness !== null && (
            <li>{t('notes.hardness', { method: told(hardness.why ?? hardness.method) })}</li>
          )}
          {hardness !== null &&
            hardness.coefficients.map(({ name, estimate, low, high }) => (
              <li key={name}>
                {t('notes.coefficient', {
                  name: told(name),
                  estimate: two(estimate),
                  low: two(low),
                  high: two(high),
                })}
              </li>
            ))}
        </ul>
      </details>
    </div>
  );
});

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
  const t = words('rates');
  return (
    <>
      {value}
      <span className={styles.interval}>
        {low === null || high === null ? t('noInterval') : t('range', { low: print(low), high: print(high) })}
      </span>
    </>
  );
}

const two = (value: number): string => decimal(value, 2);
