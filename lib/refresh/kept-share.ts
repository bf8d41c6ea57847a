import type { JobShare } from '@/lib/assess/answers';
import type { Json } from '@/lib/store';
import { asJson, jsonText } from './stored-fit';

/** A share as it is kept. */
type KeptShare = Omit<JobShare, 'tallies'> & { tallies: [technician: string, text: string][] };

/**
 * What a job adds, as it is kept: each tally, three fifths of it together, as a text within. Where a month is summed
 * again, the tallies of most hands stand as they are, and passing over a text takes a fraction of reading it.
 */
export const keptShare = (share: JobShare | null): Json =>
  share && asJson({ ...share, tallies: share.tallies.map(([whose, tally]) => [whose, jsonText(tally)]) });

/**
 * The same, read back as this program kept it.
 * @param of technicians whose tallies are wanted, those of others are null; all where it is left out
 */
export function shareOf(document: Json, of?: ReadonlySet<string>): JobShare {
  const { tallies, ...share } = document as unknown as KeptShare;
  return {
    ...share,
    tallies: tallies.map(([whose, text]) => [
      whose,
      of?.has(whose) === false ? null : (JSON.parse(text) as JobShare['tallies'][number][1]),
    ]),
  };
}
