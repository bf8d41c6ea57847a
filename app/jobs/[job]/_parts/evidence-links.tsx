import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { evidenceAddress } from '@/app/_words/address';
import { words } from '@/app/_words/words';
import type { Round } from '@/lib/measure';
import styles from './round-section.module.css';

/** From a round to what stands behind its verdicts, and to where a re-check is recorded. */
export function EvidenceLinks({ round: { job, stage, attempt } }: { round: Round }) {
  const t = words('jobs');
  return (
    <p className={styles.links} data-print="no">
      <Link className={button.button} href={evidenceAddress(job, stage, attempt)} prefetch={false}>
        {t('links.evidence')}
      </Link>
      <Link className={button.button} href={evidenceAddress(job, stage, attempt, 'outcome')} prefetch={false}>
        {t('links.outcome')}
      </Link>
    </p>
  );
}
