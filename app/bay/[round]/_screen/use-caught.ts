import { useEffect, useState } from 'react';
import { shownOf, type BayHead, type BayRecord, type PlannedStep } from '@/lib/bay';
import type { CaughtRound } from '@/lib/bay/caught';
import type { Knowledge } from '@/app/bay/_device/knowledge';

export type Caught = { is: 'working' | 'missing' } | { is: 'found'; round: CaughtRound | null };

/** After what was entered is drawn: the next number may be typed meanwhile, ms. */
const AFTER_DRAWING = 30;

/** By name, so that the analysis comes after the page, and without a connection from its copy. */
export const loadCaught = () => import('@/lib/bay/caught');

/** What the readings so far mean, worked out on this device. */
export function useCaught(
  head: BayHead,
  plan: readonly PlannedStep[],
  record: BayRecord,
  knowledge: Knowledge,
): Caught {
  const [found, setFound] = useState<{ of: BayRecord; caught: Caught } | null>(null);
  useEffect(() => {
    let gone = false;
    const timer = setTimeout(() => {
      loadCaught().then(
        ({ caughtIn }) => {
          if (gone) return;
          const round = caughtIn(head, shownOf(plan, record), knowledge);
          setFound({ of: record, caught: { is: 'found', round } });
        },
        () => {
          if (!gone) setFound({ of: record, caught: { is: 'missing' } });
        },
      );
    }, AFTER_DRAWING);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [head, plan, record, knowledge]);
  return found?.of === record ? found.caught : { is: 'working' };
}
