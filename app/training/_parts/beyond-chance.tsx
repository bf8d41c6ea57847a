import type { Estimate } from '@/app/_figures/estimate-table';
import { millimetres, signedMillimetres } from '@/app/_words/numbers';
import { beyondChance, type Beyond } from '@/lib/assess';
import styles from './beyond-chance.module.css';

interface BeyondChanceProps {
  estimates: readonly Estimate[];
  kind: 'scatter' | 'bias';
  /** Whom the figures are of: `technicians`. */
  of: string;
}

/** One sentence under a heading: which figures differ beyond chance, in the order of their codes. */
export function BeyondChance({ estimates, kind, of }: BeyondChanceProps) {
  return <p className={styles.sentence}>{beyondChanceWords(beyondChance(estimates, kind), kind, of)}</p>;
}

/** The sentence: `Beyond chance: FEL less (0.43 mm; the others 0.69 mm). …` */
export function beyondChanceWords(found: readonly Beyond[], kind: 'scatter' | 'bias', of: string): string {
  if (found.length === 0) return `No difference between these ${of} is beyond chance.`;
  const [above, below, print] =
    kind === 'scatter'
      ? (['more', 'less', millimetres] as const)
      : (['high', 'low', signedMillimetres] as const);
  const named = found.map(
    ({ key, side, value, others }) =>
      `${key} ${side === 'above' ? above : below} (${print(value, 2)}; mean of the others ${print(others, 2)})`,
  );
  return `Beyond chance: ${named.join(', ')}. Every other difference between these ${of} may be chance.`;
}
