import Link from 'next/link';
import { Table } from '@/app/_look/table';
import { address, gaugeAddress, jobAddress, setupAnchor, technicianAddress } from '@/app/_words/address';
import { dimensionName } from '@/app/_words/dimensions';
import { bareMillimetres, signed } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { deviationOf, dimensionKey, type Reading, type Setup } from '@/lib/measure';
import styles from './setup-list.module.css';

interface SetupListProps {
  setups: Setup[];
  /** Readings of this round. */
  readings: Reading[];
  timeZone: string;
  job: string;
  /** Anchor of the round. */
  name: string;
}

/** Every setting and hanging of a gauge in the order it was done, with the readings as they were read. */
export function SetupList({ setups, readings, timeZone, job, name }: SetupListProps) {
  return (
    <ol className={styles.list} data-plain>
      {setups.map((setup) => (
        <li key={setup.label} id={setupAnchor(`${name} ${setup.label}`)} className={styles.setup}>
          <p className={styles.head}>
            <b>{setup.label}</b>
            <Link href={gaugeAddress(setup.gauge)} prefetch={false}>
              {setup.gauge}
            </Link>
            <Link href={technicianAddress(setup.technician)} prefetch={false}>
              {setup.technician}
            </Link>
            <span>{dayAndTime(setup.takenAt, timeZone)}</span>
            <Link
              href={address(`${jobAddress(job)}/readings`, { setup: setup.label })}
              prefetch={false}
              data-print="no"
              aria-label={`Correct or exclude a reading of setup ${setup.label}`}
            >
              Correct
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
  return (
    <Table
      caption={`Readings of setup ${label}, millimetres`}
      captionOutOfSight
      rows={byDimension(readings)}
      rowKey={([first]) => (first === undefined ? '' : dimensionKey(first))}
      columns={[
        {
          key: 'dimension',
          head: 'Dimension',
          names: true,
          cell: ([first]) => first && dimensionName(first),
        },
        {
          key: 'values',
          head: 'As read, mm',
          numeric: true,
          cell: (repeats) => repeats.map((reading) => bareMillimetres(reading.value)).join(', '),
        },
        {
          key: 'deviations',
          head: 'Deviation, mm',
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
