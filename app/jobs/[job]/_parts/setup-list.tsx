import Link from 'next/link';
import { Table } from '@/app/_look/table';
import { HandLink, type Hands } from '@/app/_shop/hand-link';
import { address, gaugeAddress, jobAddress, setupAnchor } from '@/app/_words/address';
import { dimensionName } from '@/app/_words/dimensions';
import { words } from '@/app/_words/words';
import { bareMillimetres, signed, unit } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { deviationOf, dimensionKey, type Reading, type Setup } from '@/lib/measure';
import styles from './setup-list.module.css';

interface SetupListProps {
  setups: Setup[];
  /** Readings of this round. */
  readings: readonly Reading[];
  timeZone: string;
  job: string;
  /** Anchor of the round. */
  name: string;
  hands: Hands;
}

/** Every setting and hanging of a gauge in the order it was done, with the readings as they were read. */
export function SetupList({ setups, readings, timeZone, job, name, hands }: SetupListProps) {
  const t = words('jobs');
  return (
    <ol className={styles.list} data-plain>
      {setups.map((setup) => (
        <li key={setup.label} id={setupAnchor(`${name} ${setup.label}`)} className={styles.setup}>
          <p className={styles.head}>
            <b>{setup.label}</b>
            <Link href={gaugeAddress(setup.gauge)} prefetch={false}>
              {setup.gauge}
            </Link>
            <HandLink code={setup.technician} hands={hands} />
            <span>{dayAndTime(setup.takenAt, timeZone)}</span>
            <Link
              href={address(`${jobAddress(job)}/readings`, { setup: setup.label })}
              prefetch={false}
              data-print="no"
              aria-label={t('setups.correctOf', { setup: setup.label })}
            >
              {t('setups.correct')}
            </Link>
          </p>
          <Readings
            label={setup.label}
            readings={readings.filter((reading) => reading.setup === setup.label)}
          />
        </li>
      ))}
    </ol>
  );
}

function Readings({ label, readings }: { label: string; readings: Reading[] }) {
  const t = words('jobs');
  return (
    <Table
      caption={t('setups.caption', { setup: label, unit: unit() })}
      captionOutOfSight
      rows={byDimension(readings)}
      rowKey={([first]) => (first === undefined ? '' : dimensionKey(first))}
      columns={[
        {
          key: 'dimension',
          head: t('setups.dimension'),
          names: true,
          cell: ([first]) => first && dimensionName(first),
        },
        {
          key: 'values',
          head: t('setups.asRead', { unit: unit() }),
          numeric: true,
          cell: (repeats) => repeats.map((reading) => bareMillimetres(reading.value)).join(', '),
        },
        {
          key: 'deviations',
          head: t('setups.deviation', { unit: unit() }),
          numeric: true,
          cell: (repeats) => repeats.map((reading) => signed(deviationOf(reading))).join(', '),
        },
      ]}
    />
  );
}

/** The repeats of each dimension together, in the order they were first read. */
function byDimension(readings: readonly Reading[]): Reading[][] {
  const groups = new Map<string, Reading[]>();
  for (const reading of readings) {
    const key = dimensionKey(reading);
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  return [...groups.values()];
}
