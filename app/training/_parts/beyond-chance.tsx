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

/** The sentence: `Beyond chance, against the mean of the others: less scatter FEL (0.43 mm); more QUI (0.97 mm).` */
export function beyondChanceWords(found: readonly Beyond[], kind: 'scatter' | 'bias', of: string): string {
  if (found.length === 0) return `No difference between these ${of} is beyond chance.`;
  const [below, above, print] =
    kind === 'scatter'
      ? (['less scatter', 'more scatter', millimetres] as const)
      : (['low', 'high', signedMillimetres] as const);
  const named = (side: Beyond['side']) =>
    found.filter((one) => one.side === side).map(({ key, value }) => `${key} (${print(value, 2)})`);
  const parts = [
    [below, named('below')],
    [above, named('above')],
  ] as const;
  const told = parts.flatMap(([word, codes]) => (codes.length === 0 ? [] : [`${word} ${codes.join(', ')}`]));
  return `Beyond chance, against the mean of the others: ${told.join('; ')}. Every other difference from that mean may be chance.`;
}
