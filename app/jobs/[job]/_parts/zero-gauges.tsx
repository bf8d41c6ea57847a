import { Note } from '@/app/_look/note';
import { words } from '@/app/_words/words';
import { probability } from '@/app/_words/numbers';
import { ZERO_LIKELY_MISSET } from './zero-first';

/** How likely the datum is tilted by a zero gauge, and what to do about it. */
export function ZeroGauges({ p }: { p: number }) {
  const t = words('jobs');
  if (p < ZERO_LIKELY_MISSET) {
    return <p>{t.rich('zero.probability', { p: probability(p), b: (chunks) => <b>{chunks}</b> })}</p>;
  }
  return (
    <Note kind="caution">
      <p>{t.rich('zero.likely', { p: probability(p), b: (chunks) => <b>{chunks}</b> })}</p>
    </Note>
  );
}
