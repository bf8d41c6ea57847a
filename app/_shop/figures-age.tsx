import { Note } from '@/app/_look/note';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';

interface FiguresAgeProps {
  /** When the figures were worked out; null before the first time. */
  fit: {
    fittedAt: number;
    stale: boolean;
    learnedAt: number;
    learnedFrom: number;
    unlearned: number;
  } | null;
  timeZone: string;
}

/**
 * Says where figures lag behind the readings: after a load they are worked out anew behind the pages. And where they
 * are up to date, but a few newer rounds are judged by what was learned before them.
 */
export function FiguresAge({ fit, timeZone }: FiguresAgeProps) {
  const t = words('shop');
  if (fit?.stale === false) {
    if (fit.unlearned === 0) return null;
    const when = dayAndTime(fit.learnedAt, timeZone);
    return (
      <Note>
        <p>{t('learnedBefore', { when, rounds: fit.learnedFrom, newer: fit.unlearned })}</p>
      </Note>
    );
  }
  return (
    <Note live>
      <p>
        {fit === null ? t('firstFigures') : t('olderFigures', { when: dayAndTime(fit.fittedAt, timeZone) })}
      </p>
    </Note>
  );
}
