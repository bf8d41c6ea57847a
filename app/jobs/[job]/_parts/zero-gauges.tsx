import { Note } from '@/app/_look/note';
import { probability } from '@/app/_words/numbers';
import { ZERO_LIKELY_MISSET } from './zero-first';

/** How likely the datum is tilted by a zero gauge, and what to do about it. */
export function ZeroGauges({ p }: { p: number }) {
  if (p < ZERO_LIKELY_MISSET) {
    return (
      <p>
        Probability that a zero gauge is mis-set, which would tilt the datum of all other stations:{' '}
        <b>{probability(p)}</b>.
      </p>
    );
  }
  return (
    <Note kind="caution">
      <p>
        <b>A zero gauge is likely mis-set ({probability(p)}).</b> Its own reading cannot show it: the datum is
        tilted, and all other stations read off along the dashed line. Hang the zero gauges again and read
        every other height against them anew.
      </p>
    </Note>
  );
}
