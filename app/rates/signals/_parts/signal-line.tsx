import Link from 'next/link';
import { Tag } from '@/app/_look/tag';
import type { Signal } from '@/lib/assess/signals';
import { pWords } from '@/app/rates/_parts/words';
import { chartAddress, subjectAddress } from './names';
import styles from './signal-line.module.css';

/** One signal: what changed by how much and when, with intervals, what to do next, and where it opens. */
export function SignalLine({ signal }: { signal: Signal }) {
  const { what, subject, direction, evidence, next, p } = signal;
  return (
    <li className={styles.line}>
      <p>
        <Tag name={direction === 'worse' ? 'caution' : 'within'}>
          {direction === 'worse' ? 'Worse' : 'Better'}
        </Tag>{' '}
        {evidence.replaceAll(/(?<=[\s(])-(?=\d)/g, '−')}
        {p !== null && ` Adjusted p ${pWords(p)}.`}
      </p>
      <p>
        <b>Next:</b> {next}
      </p>
      <p className={styles.links}>
        <Link href={subjectAddress(what, subject)} prefetch={false}>
          {subject.name === null ? 'Months of the shop' : `Open ${subject.name}`}
        </Link>
        <Link href={chartAddress(what, subject)} prefetch={false}>
          Its chart
        </Link>
      </p>
    </li>
  );
}
