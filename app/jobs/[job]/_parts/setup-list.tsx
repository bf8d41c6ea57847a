import Link from 'next/link';
import { Table } from '@/app/_look/table';
import { gaugeAddress, setupAnchor, technicianAddress } from '@/app/_words/address';
import { bareMillimetres, count, signed } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { deviationOf, type Reading, type Setup } from '@/lib/measure';
import styles from './setup-list.module.css';

interface SetupListProps {
  setups: Setup[];
  /** Readings of this round. */
  readings: Reading[];
  timeZone: string;
  /** Anchor of the round. */
  name: string;
}

/** Every setting and hanging of a gauge in the order it was done, with the readings as they were read. */
export function SetupList({ setups, readings, timeZone, name }: SetupListProps) {
  return (
    <ol className={styles.list} role="list">
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
      caption={`${count(readings.length, 'reading')} of setup ${label}, millimetres`}
      captionOutOfSight
      rows={readings}
      rowKey={(reading) =>
        `${reading.quantity} ${reading.point} ${reading.side ?? ''} ${reading.repeat} ${reading.takenAt}`
      }
      columns={[
        {
          key: 'dimension',
          head: 'Dimension',
          names: true,
          cell: (reading) =>
            `${reading.quantity} ${reading.point.replace('-', '–')}${reading.side === null ? '' : reading.side === 'L' ? ' left' : ' right'}`,
        },
        { key: 'repeat', head: 'Repeat', numeric: true, cell: (reading) => reading.repeat },
        { key: 'value', head: 'Read, mm', numeric: true, cell: (reading) => bareMillimetres(reading.value) },
        {
          key: 'deviation',
          head: 'Deviation, mm',
          numeric: true,
          cell: (reading) => signed(deviationOf(reading)),
        },
      ]}
    />
  );
}
