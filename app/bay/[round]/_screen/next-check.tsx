import { useTranslations } from 'use-intl/react';
import { placeOf, type BayRecord, type PlannedStep } from '@/lib/bay';
import type { CaughtRound } from '@/lib/bay/caught';
import { placeName, pointName } from './names';
import styles from './caught.module.css';

interface NextCheckProps {
  plan: readonly PlannedStep[];
  record: BayRecord;
  round: CaughtRound;
  /** The setup of which that was said already. */
  last: string;
}

/** The one check that is worth most for its minutes, in a sentence. */
export function NextCheck({ plan, record, round: { check }, last }: NextCheckProps) {
  const t = useTranslations('bay');
  const nameOf = (label: string | null): string => {
    const setup = record.setups.find((one) => one.label === label);
    const place = setup === undefined ? null : placeOf(plan, setup.place);
    return place === null ? '' : placeName(place);
  };
  if (check === null || (check.action === 'rehang' && check.setup === last)) return null;
  const name = check.point === null ? nameOf(check.setup) : pointName(check.point);
  if (name === '') return null;
  return <p className={styles.next}>{t(`next.${check.action}`, { name, other: nameOf(check.other) })}</p>;
}
