import type { Estimate } from '@/app/_figures/estimate-table';
import { millimetres, signedMillimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { beyondChance, type Beyond } from '@/lib/assess';
import styles from './beyond-chance.module.css';

type Whom = 'technicians' | 'gauges';

interface BeyondChanceProps {
  estimates: readonly Estimate[];
  kind: 'scatter' | 'bias';
  /** Whom the figures are of. */
  of: Whom;
}

/** One sentence under a heading: which figures differ beyond chance, in the order of their codes. */
export function BeyondChance({ estimates, kind, of }: BeyondChanceProps) {
  return <p className={styles.sentence}>{beyondChanceWords(beyondChance(estimates, kind), kind, of)}</p>;
}

/** The sentence: `Beyond chance, against the mean of the others: less scatter FEL (0.43 mm); more QUI (0.97 mm).` */
export function beyondChanceWords(found: readonly Beyond[], kind: 'scatter' | 'bias', of: Whom): string {
  const t = words('training');
  if (found.length === 0) return t(`chance.none.${of}`);
  const print = kind === 'scatter' ? millimetres : signedMillimetres;
  const told = (['below', 'above'] as const).flatMap((side) => {
    const codes = found
      .filter((one) => one.side === side)
      .map(({ key, value }) => t('chance.one', { code: key, value: print(value, 2) }));
    return codes.length === 0 ? [] : [t(`chance.${kind}.${side}`, { codes: codes.join(', ') })];
  });
  return t('chance.found', { found: told.join('; ') });
}
