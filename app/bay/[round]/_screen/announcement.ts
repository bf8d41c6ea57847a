import type { Speech } from '@/app/_words/speech';
import type { CaughtRound } from '@/lib/bay/caught';
import type { LastReading } from './last-reading';
import { deviationText, dimensionText, type BayWords } from './names';

const valuesText = (t: BayWords, to: Speech, last: LastReading): string =>
  last.read
    .map(({ dimension, deviation, within }) =>
      [
        t('kept.value', { name: dimensionText(t, dimension), deviation: deviationText(deviation, to) }),
        t(within ? 'kept.within' : 'kept.out'),
      ].join(', '),
    )
    .join('. ');

/** What a screen reader is told after something was entered; null for `next` where nothing is to be done. */
export function announcement(t: BayWords, to: Speech, last: LastReading | null, next: string | null): string {
  const kept = last === null ? '' : last.hidden ? t('kept.blind') : `${valuesText(t, to, last)}.`;
  return [kept, next === null ? '' : t('announce.next', { what: next })].filter(Boolean).join(' ');
}

/** What is spoken: a reading that is out and what to do about it, then the next thing to do. */
export function spokenText(
  t: BayWords,
  to: Speech,
  { last, round }: { last: LastReading | null; round: CaughtRound | null },
  next: string,
): string {
  if (last === null || last.hidden || last.read.every(({ within }) => within)) return next;
  const said = round?.heights.filter(({ setup }) => setup === last.setup.label) ?? [];
  const worst = said.find(({ call }) => call !== 'nothing-found');
  const advice = worst === undefined || worst.call === 'nothing-found' ? '' : t(`kept.do.${worst.call}`);
  return [`${valuesText(t, to, last)}.`, advice, next].filter(Boolean).join(' ');
}
