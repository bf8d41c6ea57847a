import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { Tag } from '@/app/_look/tag';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { Signal } from '@/lib/assess/signals';
import { pWords } from '@/app/rates/_parts/words';
import { chartAddress, subjectAddress } from './names';
import styles from './signal-line.module.css';

/** Where a signal leads: not to the page it stands on, nor to charts that its reader may not see. */
export type Opens = 'subject and chart' | 'chart' | 'nothing';

interface SignalLineProps {
  signal: Signal;
  opens?: Opens;
}

/** One signal: what changed by how much and when, with intervals, what to do next, and where it opens. */
export const SignalLine = drawnOnce(function SignalLine({
  signal,
  opens = 'subject and chart',
}: SignalLineProps) {
  const t = words('rates');
  const { what, subject, direction, evidence, next, p } = signal;
  return (
    <li className={styles.line}>
      <p>
        <Tag name={direction === 'worse' ? 'caution' : 'within'}>{t(`signals.${direction}`)}</Tag>{' '}
        {told(evidence)}
        {what === 'setting-scatter' && ` ${t('signals.scatter')}`}
        {p !== null && ` ${t('signals.p', { p: pWords(p) })}`}
      </p>
      <p>{t.rich('signals.next', { what: told(next), b: (chunks) => <b>{chunks}</b> })}</p>
      {opens !== 'nothing' && (
        <p className={styles.links}>
          {opens === 'subject and chart' && (
            <Link href={subjectAddress(what, subject)} prefetch={false}>
              {subject.name === null ? t('signals.months') : t('signals.open', { name: subject.name })}
            </Link>
          )}
          <Link href={chartAddress(what, subject)} prefetch={false}>
            {t('signals.chart')}
          </Link>
        </p>
      )}
    </li>
  );
});
